"""A consumable on its pages: its form, its story, the kit at a glance, and what can be taken out."""

import csv
import io
from datetime import timedelta
from decimal import Decimal
from uuid import uuid4

import pytest
from django.urls import reverse
from django.utils import timezone

from tests.factories import blocked_foot, make_cow, make_house, make_kit, put_down, stock_up, under_way
from visits.domain.kit.stock_kinds import WriteOffReason
from visits.models import Consumable, UseRule
from visits.services.kit.stock_place import place_of_van
from visits.services.kit.stock_word import Amount, StockWord
from visits.services.kit.write_off_stock import write_off_stock
from visits.web.kit.glance_page import FILES

GLUE = {
    "name": "Two-part glue",
    "kind": "glue",
    "unit": "ml",
    "pack": "2000",
    "lead_days": "5",
    "is_active": "on",
}


@pytest.fixture
def house(db):
    return make_house()


@pytest.fixture
def office(client, house):
    client.force_login(house.office)
    return client


def page_of(client, name, *args):
    answer = client.get(reverse(name, args=args))
    assert answer.status_code == 200
    return answer.content.decode()


def test_a_consumable_is_put_on_the_list_with_its_recipe_by_weight(house, office):
    sent = {**GLUE, "grams_per_ml": "1,05", "typed_in": "g", "use_0": "42", "use_8": "0,21"}
    assert office.post(reverse("kit_item_new"), sent).status_code == 302
    item = Consumable.objects.within(house.scope).get()
    rules = UseRule.objects.within(house.scope).values_list("per", "block_kind", "quantity")
    assert sorted(rules) == [("block", "", Decimal(40)), ("cow", "", Decimal("0.20"))]
    form = office.get(reverse("kit_item_edit", args=[item.pk])).context["form"]
    assert (form["use_0"].value(), form["grams_per_ml"].value()) == ("40", "1.05")


@pytest.mark.parametrize(
    ("change", "status", "said"),
    [
        ({"typed_in": "g", "use_0": "42"}, 409, "say how many grams a ml weighs"),
        ({"pack": "1"}, 400, "Say how much one tin, bag or canister holds"),
        ({"pack": "1,200"}, 400, "Is that 1200 or 1.200"),
        ({"service_percent": "100"}, 400, "99.9"),
        ({"name": "WRAP"}, 400, "on the list already"),
    ],
)
def test_what_is_to_be_mended_is_said(house, office, change, status, said):
    Consumable.objects.create(business=house.business, name="wrap", kind="wrap", unit="each")
    answer = office.post(reverse("kit_item_new"), {**GLUE, **change})
    assert answer.status_code == status
    assert said in answer.content.decode()
    assert Consumable.objects.within(house.scope).count() == 1


def test_the_kit_without_anything_offers_a_list_to_begin_with(house, office):
    words = page_of(office, "kit")
    assert "No consumables are on the list yet" in words
    assert reverse("kit_read_in") + "?start" in words


def test_the_kit_at_a_glance_and_one_item_say_what_was_used_and_what_is_wrong(house, office):
    kit = make_kit(house.business)
    start = timezone.now() - timedelta(days=2)
    stock_up(kit["wood"], 10, at=start, van=house.van)
    visit = under_way(house.farm, house.van)
    put_down(visit, make_cow(house.farm, "412"), blocked_foot())
    words = page_of(office, "kit")
    assert "below nought" in words
    assert "Glue in Van 1: more was used than ever came." in words
    item = page_of(office, "kit_item", kit["wood"].pk)
    assert "Used with a cow" in item
    assert "412</a> at Low Croft" in item
    assert "Glue: below nought in Van 1, count it" in page_of(office, "kit_item", kit["glue"].pk)


def test_every_list_can_be_taken_out_and_the_consumables_read_in_again(house, office):
    kit = make_kit(house.business)
    stock_up(kit["wood"], 10, at=timezone.now(), van=house.van)
    place = place_of_van(house.van)
    word = StockWord(timezone.now(), timezone.now(), house.office, uuid4(), "=trodden on")
    write_off_stock(
        place=place, gone=[Amount(kit["wood"], Decimal(1))], because=WriteOffReason.BROKEN, word=word
    )
    lists = {
        what: office.get(reverse("kit_csv", args=[what])).content
        for what in ("consumables", "stock", "ledger", "lots")
    }
    rows = {what: list(csv.reader(io.StringIO(lists[what].decode("utf-8-sig")))) for what in lists}
    assert [len(each) - 1 for each in rows.values()] == [3, 3, 2, 1]
    assert rows["ledger"][2][-3:] == ["Broken or spoilt", house.office.name, "'=trodden on"]
    assert rows["lots"][1][6] == "9"
    sent = {"uid": uuid4(), "lines": lists["consumables"].decode("utf-8-sig"), "act": "look"}
    plan = office.post(reverse("kit_read_in"), sent).context["plan"]
    assert (len(plan.unchanged), plan.new, plan.changed, plan.refused) == (3, (), (), ())
    page = page_of(office, "kit")
    assert all(f"{words} (CSV)" in page for words in FILES.values())
    assert {office.get(reverse("kit_csv", args=[what])).status_code for what in FILES} == {200}
    assert office.get(reverse("kit_csv", args=["wishes"])).status_code == 404

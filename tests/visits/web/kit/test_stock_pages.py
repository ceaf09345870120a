"""What comes and goes, put down on its pages."""

from decimal import Decimal
from uuid import uuid4

import pytest
from django.urls import reverse
from django.utils import timezone

from tests.factories import make_house, make_kit, make_van, stock_up
from trimops.kernel.clock import local_day
from visits.models import StockMovement
from visits.services.kit.stock_place import place_of_van, store_of


@pytest.fixture
def house(db):
    return make_house()


@pytest.fixture
def kit(house):
    return make_kit(house.business)


@pytest.fixture
def office(client, house):
    client.force_login(house.office)
    return client


@pytest.fixture
def trimmer(client, house):
    client.force_login(house.trimmer)
    return client


def lines_of(house):
    rows = StockMovement.objects.within(house.scope).select_related("place", "consumable")
    return [(row.kind, row.consumable.name, row.place.name, row.quantity) for row in rows]


def delivery(house, kit, **words):
    today = local_day(timezone.now(), house.business.zone)
    first = {"item_0": kit["wood"].pk, "quantity_0": "40", "cost_0": "84,50", "code_0": "L7"}
    second = {"item_4": kit["glue"].pk, "quantity_4": "1 000", "expires_on_4": "2030-01-31"}
    own = {"uid": uuid4(), "bought_on": today, "place": store_of(house.scope).pk, "supplier": "Shop"}
    return {**own, **first, **second, **words}


def test_a_delivery_of_several_lines_is_noted_once(house, kit, office):
    sent = delivery(house, kit)
    for _ in range(2):
        assert office.post(reverse("kit_bought"), sent).status_code == 302
    assert lines_of(house) == [
        ("bought", "Wooden block", "Store", Decimal(40)),
        ("bought", "Glue", "Store", Decimal(1000)),
    ]
    row = StockMovement.objects.within(house.scope).select_related("lot").first()
    assert (row.cost, row.lot.code, row.lot.supplier) == (Decimal("84.50"), "L7", "Shop")


def test_faults_of_a_delivery_name_their_line_and_nothing_is_noted(house, kit, office):
    answer = office.post(
        reverse("kit_bought"), delivery(house, kit, quantity_0="", code_2="L9", quantity_4="9999999")
    )
    words = answer.content.decode()
    assert answer.status_code == 400
    assert "Line 1: say how much was bought." in words
    assert "Line 3: say what it is." in words
    answer = office.post(reverse("kit_bought"), delivery(house, kit, quantity_4="9999999"))
    assert answer.status_code == 409
    assert "cannot be meant" in answer.content.decode()
    assert lines_of(house) == []


def test_more_than_is_there_is_moved_when_somebody_says_it_was(house, kit, office):
    stock_up(kit["wood"], 10, at=timezone.now())
    address = reverse("kit_moved")
    sent = {"uid": uuid4(), f"item_{kit['wood'].pk}": "12"}
    answer = office.post(address, sent)
    assert answer.status_code == 409
    assert "had 10 of Wooden block, not 12" in answer.content.decode()
    assert 'type="checkbox" name="is_really_there"' in answer.content.decode()
    assert office.post(address, {**sent, "is_really_there": "on"}).status_code == 302
    assert lines_of(house)[1:] == [
        ("moved", "Wooden block", "Store", Decimal(-12)),
        ("moved", "Wooden block", "Van 1", Decimal(12)),
    ]


def test_it_is_moved_where_the_page_said_or_nowhere(house, kit, office):
    store, van = store_of(house.scope), place_of_van(house.van)
    stock_up(kit["wood"], 10, at=timezone.now(), van=house.van)
    page = office.get(reverse("kit_moved"), {"from": van.pk, "to": store.pk}).content.decode()
    assert f'action="?from={van.pk}&amp;to={store.pk}"' in page
    house.van.is_active = False
    house.van.save()
    place_of_van(make_van(house.business, house.trimmer, "Van 2"))
    address, sent = reverse("kit_moved"), {"uid": uuid4(), f"item_{kit['wood'].pk}": "4"}
    foreign = place_of_van(make_house("Another").van)
    for strange in (foreign.pk, 10**12, "x"):
        assert office.post(f"{address}?from={strange}&to={store.pk}", sent).status_code == 404
    assert office.post(f"{address}?from={van.pk}&to={store.pk}", sent).status_code == 302
    assert lines_of(house)[1:] == [
        ("moved", "Wooden block", "Van 1", Decimal(-4)),
        ("moved", "Wooden block", "Store", Decimal(4)),
    ]


def test_a_place_is_counted_blind_and_then_both_figures_are_shown(house, kit, trimmer):
    stock_up(kit["wood"], 24, at=timezone.now(), van=house.van)
    address = reverse("kit_count", args=[place_of_van(house.van).pk])
    page = trimmer.get(address).content.decode()
    before, after = page.split("What the ledger has</summary>")
    assert "24" not in before.split("<form")[1]
    assert "24" in after
    wood, wrap = f"item_{kit['wood'].pk}", f"item_{kit['wrap'].pk}"
    answer = trimmer.post(address, {"uid": uuid4(), wood: "22", wrap: "0"}, follow=True)
    words = answer.content.decode()
    assert "1 of 2 in Van 1 differ from the ledger" in words
    assert lines_of(house)[1:] == [("counted", "Wooden block", "Van 1", Decimal(-2))]
    assert trimmer.post(address, {"uid": uuid4(), wood: "many"}).status_code == 400
    assert trimmer.post(address, {"uid": uuid4()}).status_code == 400


def test_a_lot_past_its_date_is_written_off(house, kit, office):
    lot = stock_up(kit["glue"], 500, at=timezone.now()).lot
    lot.expires_on = "2020-01-31"
    lot.save()
    store = store_of(house.scope)
    asked = f"?item={kit['glue'].pk}&place={store.pk}&lot={lot.pk}"
    form = office.get(reverse("kit_written_off") + asked).context["form"]
    assert (form["quantity"].value(), form["because"].value(), form["lot"].value()) == (
        "500",
        "expired",
        lot.pk,
    )
    sent = {"uid": uuid4(), "item": kit["glue"].pk, "place": store.pk, "lot": lot.pk, "quantity": "500"}
    assert office.post(reverse("kit_written_off"), sent).status_code == 400
    answer = office.post(reverse("kit_written_off"), {**sent, "because": "expired"})
    assert answer.headers["Location"] == reverse("kit_item", args=[kit["glue"].pk])
    assert lines_of(house)[1:] == [("written_off", "Glue", "Store", Decimal(-500))]
    again = office.post(reverse("kit_written_off"), {**sent, "uid": uuid4(), "because": "lost"})
    assert again.status_code == 409
    assert "had none of Glue" in again.content.decode()


def test_things_of_another_business_cannot_be_named(house, kit, office):
    other = make_house("Far side")
    theirs = make_kit(other.business)
    sent = delivery(house, kit, item_0=theirs["wood"].pk, place=store_of(other.scope).pk)
    assert office.post(reverse("kit_bought"), sent).status_code == 400
    assert office.get(reverse("kit_written_off") + f"?item={theirs['wood'].pk}").status_code == 404
    assert lines_of(house) == lines_of(other) == []

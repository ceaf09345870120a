"""Who changed what, as a reader sees it, on pages and by the API."""

import json
from html import escape

import pytest
from django.test import Client
from django.urls import reverse

from farms.models import Contact
from farms.services.save_farm import save_farm
from invoicing.models import Agreement
from tests.factories import (
    NOON,
    blocked_foot,
    make_house,
    make_prices,
    put_down,
    under_way,
    wanted,
)
from trimops.accounts.roles import Role
from trimops.audit.models import AuditEntry
from trimops.audit.services.blot_audit import blot_audit
from trimops.watch.doing import Doing, done_by


@pytest.fixture
def open_as(house):
    def call(role, address):
        client = Client()
        client.force_login(house.memberships[role].user)
        return client.get(address)

    return call


def text_of(answer):
    assert answer.status_code == 200, answer.status_code
    return " ".join(answer.content.decode().split())


def test_a_form_sent_says_who_sent_it_from_where_and_by_which_page(house):
    client = Client(REMOTE_ADDR="192.0.2.9")
    client.force_login(house.trimmer)
    contact = {"name": "Ida Reed", "part": "Herd manager", "told_by": "", "language": "en"}
    client.post(reverse("contacts", args=[house.farm.pk]), contact, headers={"X-Request-ID": "req-12345678"})
    entry = AuditEntry.objects.within(house.scope).filter(what="farms.contact").last()
    assert entry is not None, "the form was refused"
    assert (entry.by, entry.seen_from, entry.via) == (house.trimmer, "192.0.2.9", "POST contacts")
    assert entry.request == "req-12345678"
    assert len(entry.session) == 16
    assert client.session.session_key not in (entry.session, entry.via)


def test_a_change_stands_on_the_farms_page_in_plain_words(house, open_as):
    house.farm.hygiene_level, house.farm.phone = 2, "01632 960001"
    with done_by(Doing(house.office.pk, "POST farm_edit", "192.0.2.7")):
        save_farm(farm=house.farm, at=NOON, by=house.office)
    told = text_of(open_as(Role.TRIMMER, reverse("farm_changes", args=[house.farm.pk])))
    assert "Phone: was nothing, now 01632 960001" in told
    assert escape(str(house.office)) in told
    assert "from 192.0.2.7" in told
    label = dict(type(house.farm)._meta.get_field("hygiene_level").flatchoices)[2]
    assert f"now {label}" in told


def test_a_cow_and_a_visit_show_what_was_done_at_the_crush(house, open_as):
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, blocked_foot())
    for address in (reverse("visit_changes", args=[visit.pk]), reverse("cow_changes", args=[house.cow.pk])):
        told = text_of(open_as(Role.OFFICE, address))
        for words in ("Trimmed foot: added", "Finding: added", "Claw action: added", "Block: added"):
            assert words in told
    assert f"Cow: {house.cow.number}" in told


def test_what_was_taken_away_still_stands_on_its_farms_page(house, open_as):
    Contact.objects.create(business=house.business, farm=house.farm, name="Ida Reed", part="herd").delete()
    told = text_of(open_as(Role.TRIMMER, reverse("farm_changes", args=[house.farm.pk])))
    assert "Contact: taken away" in told
    assert told.count("Ida Reed") == 2


def test_a_trimmer_sees_no_money_on_a_farms_page(house, open_as):
    words = {
        "item": "call_out",
        "kind": "price",
        "amount": 7,
        "why": "Old friends",
        "valid_from": NOON.date(),
    }
    Agreement.objects.create(business=house.business, farm=house.farm, **words)
    address = reverse("farm_changes", args=[house.farm.pk])
    assert "Old friends" not in text_of(open_as(Role.TRIMMER, address))
    assert "Old friends" in text_of(open_as(Role.OFFICE, address))


def test_prices_are_told_with_their_currency(house, open_as):
    prices = make_prices(house.business)
    told = text_of(open_as(Role.OFFICE, reverse("price_list_changes", args=[prices.pk])))
    assert "Unit price: 10.00 GBP" in told
    assert "Price list: From January" in told


def test_what_was_erased_is_said_to_be(house, open_as):
    blot_audit(scope=house.scope, roots=[f"farms.farm:{house.farm.pk}"], at=NOON)
    told = text_of(open_as(Role.OWNER, reverse("farm_changes", args=[house.farm.pk])))
    assert "What it said was erased on Mon 2 Mar 2026." in told


def test_the_owner_narrows_all_changes(house, open_as):
    with done_by(Doing(house.office.pk, "POST x")):
        wanted(house.farm)
    base = reverse("changes")
    assert "Visit: added" in text_of(open_as(Role.OWNER, f"{base}?by={house.office.pk}"))
    assert "Visit: added" not in text_of(open_as(Role.OWNER, f"{base}?by={house.trimmer.pk}"))
    assert "Visit: added" not in text_of(open_as(Role.OWNER, f"{base}?kind=farms.cow"))
    assert "No change of that kind" in text_of(open_as(Role.OWNER, f"{base}?day=2020-01-01"))
    assert open_as(Role.OWNER, f"{base}?by=x&kind=y&day=z").status_code == 200


def ask(open_as, role, query=""):
    return open_as(role, f"/api/v1/changes/{query}")


def test_the_api_tells_one_thing_with_all_that_hangs_on_it(house, open_as):
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, blocked_foot())
    answer = ask(open_as, Role.TRIMMER, f"?what=visit&id={visit.pk}&limit=200")
    items = answer.json()["items"]
    assert {"visits.visit", "visits.trim", "visits.finding"} <= {item["what"] for item in items}
    added = next(item for item in items if item["what"] == "visits.trim")
    assert (added["kind"], added["before"], added["after"]["cow_id"]) == ("added", {}, house.cow.pk)
    assert added["under"] == f"visits.visit:{visit.pk}"


@pytest.mark.parametrize(
    ("role", "seen", "hidden"),
    [
        (Role.OWNER, {"accounts.membership", "invoicing.price", "farms.cow"}, set()),
        (Role.OFFICE, {"invoicing.price", "farms.cow"}, {"accounts.membership"}),
        (Role.TRIMMER, {"farms.cow", "farms.farmaccess"}, {"invoicing.price", "accounts.membership"}),
    ],
)
def test_the_api_tells_each_part_what_it_may_see(house, open_as, role, seen, hidden):
    make_prices(house.business)
    whats = {item["what"] for item in ask(open_as, role, "?limit=200").json()["items"]}
    assert seen <= whats
    assert not hidden & whats


def test_the_api_says_what_cannot_be_meant(house, open_as):
    assert ask(open_as, Role.OWNER, "?what=visit").status_code == 422
    assert ask(open_as, Role.OWNER, "?id=3").status_code == 422
    assert ask(open_as, Role.OWNER, "?what=moon&id=3").status_code == 400
    assert ask(open_as, Role.FARM).status_code == 403


def test_another_business_sees_nothing_of_it(house, open_as):
    other = make_house("Beech & Elm")
    told = ask(open_as, Role.OWNER, f"?what=farm&id={other.farm.pk}").json()["items"]
    assert told == []
    assert open_as(Role.OWNER, reverse("farm_changes", args=[other.farm.pk])).status_code == 404
    assert (
        open_as(Role.OWNER, reverse("member_changes", args=[other.memberships[Role.OWNER].pk])).status_code
        == 404
    )
    assert json.dumps(told) == "[]"

"""Every address, for every part a person may play: closed to strangers, to other parts, to other businesses."""

import logging
import re
from datetime import timedelta
from html import unescape
from itertools import product
from uuid import UUID, uuid4

import pytest
from django.db import transaction
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from farms.models import FarmAccess
from farms.services.give_farm_rights import give_farm_rights
from invoicing.models import Invoice
from tests.factories import NOON, finish, make_business, make_user, planned
from tests.walls.routes import API, BY_LINK, DOOR, PAGES, PUBLIC, every_pattern
from trimops.accounts.roles import FarmRight, Role
from trimops.accounts.services.invite_person import Guest, invitation_token, invite_person
from trimops.portal.services.erase_farm import erase_farm
from trimops.web.scoped_page import ScopedPage
from visits.models import CalendarAddress, Visit

ROUTES = pytest.mark.parametrize("name", PAGES)
NAMES_ROWS = pytest.mark.parametrize("name", [name for name, route in PAGES.items() if route.rows])
FOR_CLIENTS = [name for name, route in PAGES.items() if route.rows and Role.FARM in route.roles]
METHODS = ("get", "post")
TOKEN = re.compile(rb'name="csrfmiddlewaretoken" value="\w+"')


@pytest.fixture(autouse=True)
def _quiet(caplog):
    """Refusals are expected here by the hundred; only what breaks is to be read."""
    caplog.set_level(logging.CRITICAL, logger="django.request")


def person(furnished, role):
    return furnished.house.memberships[role].user


def address(name, *keyrings):
    return reverse(name, kwargs=PAGES[name].parts(*keyrings))


def page_class(name):
    (pattern,) = [pattern for pattern in every_pattern() if pattern.name == name]
    return pattern.callback.view_class


def test_every_address_has_its_line_in_the_table_and_every_line_its_address():
    names = [pattern.name for pattern in every_pattern()]
    assert len(names) == len(set(names)), "a name leads to one address"
    assert set(names) == set(PAGES) | set(API) | BY_LINK | DOOR | PUBLIC


@ROUTES
def test_the_page_opens_to_the_parts_that_the_table_says(name):
    assert issubclass(page_class(name), ScopedPage)
    assert page_class(name).roles == PAGES[name].roles


@ROUTES
def test_a_stranger_is_sent_to_sign_in(name, mine, db):
    for method in METHODS:
        answer = getattr(Client(), method)(address(name, mine.keys))
        assert answer.status_code == 302
        assert answer["Location"].startswith(reverse("account_login"))


@ROUTES
def test_a_person_without_a_business_is_refused(name, mine, signed_in):
    assert signed_in(make_user()).get(address(name, mine.keys)).status_code == 403


@ROUTES
def test_other_parts_are_refused(name, mine, signed_in):
    for role in set(Role) - PAGES[name].roles:
        client = signed_in(person(mine, role))
        for method in METHODS:
            assert getattr(client, method)(address(name, mine.keys)).status_code == 403, (role, method)


@ROUTES
def test_whoever_may_open_it_is_answered(name, mine, signed_in):
    for role in PAGES[name].roles:
        answer = signed_in(person(mine, role)).get(address(name, mine.keys))
        assert answer.status_code == PAGES[name].answer, role


@NAMES_ROWS
def test_another_businesss_rows_are_not_there(name, mine, theirs, signed_in):
    rings = list(product((mine.keys, theirs.keys), repeat=len(PAGES[name].rows)))[1:]
    for role, ring, method in product(PAGES[name].roles, rings, METHODS):
        status = getattr(signed_in(person(mine, role)), method)(address(name, *ring)).status_code
        # A page that is only looked at, or only pressed, says so before it looks for the row.
        assert status == 404 or (status == 405 and not hasattr(page_class(name), method)), (role, method)


@NAMES_ROWS
def test_rows_that_never_were_are_not_there_in_the_same_words(name, mine, theirs, signed_in):
    client = signed_in(person(mine, next(iter(PAGES[name].roles))))
    method = "get" if hasattr(page_class(name), "get") else "post"
    nowhere = {row: uuid4() if isinstance(key, UUID) else 987_654_321 for row, key in mine.keys.items()}
    gone, foreign = (getattr(client, method)(address(name, keys)) for keys in (nowhere, theirs.keys))
    assert (gone.status_code, foreign.status_code) == (404, 404)
    assert TOKEN.sub(b"", gone.content) == TOKEN.sub(b"", foreign.content)


IN_FORMS = {
    "the van of a plan": ("visit_plan", {"start": "2026-03-05T10:00"}, "van", "van", 400),
    "the payer of a farm": (
        "farm_edit",
        {"name": "Low Croft", "latitude": "54.1", "longitude": "-2.3"},
        "payer",
        "payer",
        400,
    ),
    "the van of a calendar": ("calendar", {"name": "Phone"}, "shows", "calendar_of_van", 400),
    "a contact who leaves": ("contacts", {}, "leaves", "contact", 404),
}


@pytest.mark.parametrize(("name", "form", "field", "row", "answer"), IN_FORMS.values(), ids=IN_FORMS)
def test_another_businesss_row_cannot_be_named_in_a_form(
    name, form, field, row, answer, mine, theirs, signed_in
):
    client = signed_in(person(mine, Role.OWNER))
    refused = client.post(address(name, mine.keys), {**form, field: theirs.keys[row]})
    assert refused.status_code == answer
    if answer == 400:
        assert field in refused.context["form"].errors


def test_what_is_no_number_in_a_form_breaks_nothing(mine, signed_in):
    client = signed_in(person(mine, Role.OWNER))
    assert client.post(address("contacts", mine.keys), {"leaves": "nobody"}).status_code in (400, 404)


FORGED = {
    "a cow struck from the list": ("portal_draft", {"act": "strike", "why": "x"}, "cow", "cow", 404),
    "a cow put on the list": ("portal_draft", {"act": "add", "why": "x"}, "cow", "cow", 404),
    "a change taken back": ("portal_draft", {"act": "back"}, "change", "draft_change", 404),
    "the farm to sit at": ("portal_farms", {}, "farm", "farm", 404),
}


@pytest.mark.parametrize(("name", "form", "field", "row", "answer"), FORGED.values(), ids=FORGED)
def test_a_farm_client_names_no_row_of_another_farm_in_a_form(
    name, form, field, row, answer, mine, theirs, signed_in
):
    client = signed_in(person(mine, Role.FARM))
    for ring in (mine.other, theirs.keys):
        refused = client.post(address(name, mine.keys), {**form, field: ring[row]})
        assert refused.status_code == answer


def test_a_form_without_the_token_of_its_page_does_nothing(mine, db):
    exempt = {pattern.name for pattern in every_pattern() if getattr(pattern.callback, "csrf_exempt", False)}
    assert exempt <= set(API), "the JSON side asks for the token by itself"
    browser = Client(enforce_csrf_checks=True)
    browser.force_login(person(mine, Role.FARM))
    for name in ("portal_wish", "portal_erase", "portal_vet", "portal_farms"):
        answer = browser.post(address(name, mine.keys), headers={"Origin": "https://evil.example"})
        assert (answer.status_code, answer.templates[0].name) == (403, "403_csrf.html")


@pytest.mark.parametrize("name", FOR_CLIENTS)
def test_a_farm_client_sees_no_other_farm_of_the_business(name, mine, signed_in):
    client = signed_in(person(mine, Role.FARM))
    rings = list(product((mine.keys, mine.other), repeat=len(PAGES[name].rows)))[1:]
    for ring, method in product(rings, METHODS):
        status = getattr(client, method)(address(name, *ring)).status_code
        assert status == 404 or (status == 405 and not hasattr(page_class(name), method)), method


BY_RIGHT = [name for name, route in PAGES.items() if Role.FARM in route.roles and page_class(name).right]


@pytest.mark.parametrize("name", BY_RIGHT)
def test_a_page_is_closed_to_a_person_of_the_farm_without_its_right(name, mine, signed_in):
    access = FarmAccess.objects.within(mine.house.scope).get(pk=mine.keys["access"])
    give_farm_rights(access=access, rights=set(FarmRight) - {page_class(name).right})
    client = signed_in(person(mine, Role.FARM))
    for method in METHODS:
        answer = getattr(client, method)(address(name, mine.keys))
        assert answer.status_code == 403, method
        assert page_class(name).right.label in unescape(answer.content.decode())


@ROUTES
def test_an_empty_form_is_answered_and_breaks_nothing(name, mine, signed_in):
    for role in PAGES[name].roles:
        # Taken back each time: what one person has taken away is not there for the next.
        with transaction.atomic():
            answer = signed_in(person(mine, role)).post(address(name, mine.keys))
            transaction.set_rollback(True)
        assert answer.status_code in (200, 302, 400, 405, 409), role


def test_a_calendar_opens_to_its_secret_alone(mine, theirs, db):
    tomorrow = timezone.now() + timedelta(days=1)
    ours, foreign = (planned(f.house.farm, f.house.van, tomorrow) for f in (mine, theirs))
    answer = Client().get(reverse("calendar_feed", args=[mine.secret]))
    assert (answer.status_code, answer["Content-Type"]) == (200, "text/calendar; charset=utf-8")
    assert str(ours.uid).encode() in answer.content
    assert str(foreign.uid).encode() not in answer.content
    assert Client().get(reverse("calendar_feed", args=[mine.secret[::-1]])).status_code == 404


def test_a_closed_calendar_is_not_there(mine, db):
    row = CalendarAddress.objects.within(mine.house.scope).get(pk=mine.keys["calendar_address"])
    row.revoked_at = NOON
    row.save()
    assert Client().get(reverse("calendar_feed", args=[mine.secret])).status_code == 404


def test_an_invitation_opens_to_its_link_and_a_bent_one_is_refused(mine, db):
    guest = Guest("guest@example.invalid", "A Guest", Role.TRIMMER)
    business = make_business("Third")
    token = invitation_token(
        invite_person(business=business, guest=guest, at=NOON, by=person(mine, Role.OWNER))
    )
    assert Client().get(reverse("invitation", args=[token])).status_code == 200
    assert Client().get(reverse("invitation", args=[token + "x"])).status_code == 409


@pytest.mark.parametrize("name", sorted(PUBLIC))
def test_what_is_open_to_all_is_the_same_for_all(name, mine, signed_in):
    people = (Client(), *(signed_in(person(mine, role)) for role in Role))
    answers = [client.get(reverse(name)) for client in people]
    assert {answer.status_code for answer in answers} == {200}
    assert len({answer.content for answer in answers}) == 1
    assert not any(answer.cookies for answer in answers)


def test_every_page_of_the_business_opens_after_a_farm_of_it_was_erased(mine, signed_in):
    house = mine.house
    house.farm.name = "Start"
    house.farm.save()
    finish(Visit.objects.within(house.scope).get(pk=mine.keys["under_way"]), house.trimmer)
    erase_farm(farm=house.farm, typed_name="Start", at=NOON, by=house.owner)
    books = ("payment", "bank_file", "bank_entry", "journey", "issued")
    kept = {row: mine.keys[row] for row in ("farm", "week_plan", "replan", "plan_shift", *books)}
    invoice = Invoice.objects.within(house.scope).filter(farm=house.farm).get()
    keys = mine.other | kept | {"finished": invoice.visit_id, "invoice": invoice.pk}
    client = signed_in(house.owner)
    for name, route in PAGES.items():
        is_left = not route.rows or {*kept, "finished", "invoice"} & set(route.rows.values())
        if Role.OWNER in route.roles and is_left and set(route.rows.values()) <= set(keys):
            # 409: the pages that change a draft, asked for the issued invoice
            assert client.get(address(name, keys)).status_code in (200, 302, 404, 405, 409), name
    for name in ("this_week", "replan", "invoice_paper", "payment", "bank_entry", "journey", "farm_account"):
        assert client.get(address(name, keys)).status_code == 200
    gone = signed_in(person(mine, Role.FARM)).get(address("portal_home", mine.keys))
    assert gone["Location"].startswith(reverse("account_login"))


def test_a_page_that_names_no_part_is_closed_to_all():
    assert ScopedPage.roles == frozenset()

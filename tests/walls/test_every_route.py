"""Every address has its row; forms that name rows of others; keys in addresses. test_every_cell.py walks them all."""

import logging
from datetime import timedelta

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from invoicing.models import Invoice
from tests.factories import NOON, finish, make_business, planned
from tests.walls.routes import API, BY_LINK, DOOR, PAGES, PUBLIC, every_pattern
from trimops.accounts.actions import MAY, action_of
from trimops.accounts.roles import FarmRight, Role
from trimops.accounts.services.invite_person import Guest, invitation_token, invite_person
from trimops.portal.services.erase_farm import erase_farm
from trimops.web.scoped_page import ScopedPage
from visits.models import CalendarAddress, Visit


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
    # Twice: whoever signed in just now is told of it by a cookie once, wherever they look.
    answers = [[client.get(reverse(name)) for _ in range(2)][1] for client in people]
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


@pytest.mark.parametrize("name", PAGES)
def test_a_page_does_what_its_row_says_by_the_table_of_actions(name):
    """Two statements of the same: the page names an action, of which the table knows; the row names parts and right."""
    page, route = page_class(name), PAGES[name]
    assert issubclass(page, ScopedPage)
    for method in {"GET", "POST"} & route.methods:
        allowed = MAY[action_of(page.does, method)]
        said = {role for role in Role if route.may(role, frozenset(FarmRight), method)}
        assert allowed.roles == said, method
        if Role.FARM in said:
            right = (route.right_to_post if method == "POST" else None) or route.right
            assert allowed.right == right, method


def test_a_page_that_names_no_action_is_closed_to_all():
    assert ScopedPage.does is None
    assert action_of(None, "get") is None

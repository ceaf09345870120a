"""The owner locks the books up to a day and opens them again; drafts inside are told before."""

from datetime import date

from django.test import Client
from django.urls import reverse

from invoicing.models import Invoice
from invoicing.selectors.period_lock import locked_until
from tests.factories import NOON, make_house

LAST = date(2026, 1, 31)


def at_desk(person):
    client = Client()
    client.force_login(person)
    return client


def lock(desk, until="2026-01-31", **said):
    return desk.post(
        reverse("period_lock"), {"until": until, "why": "To the accountant", **said}, follow=True
    )


def test_the_owner_locks_and_opens_with_a_reason(house):
    desk = at_desk(house.owner)
    assert "Locked up to Sat 31 Jan 2026" in lock(desk).content.decode()
    assert locked_until(house.scope) == LAST
    assert "Nothing is locked" in lock(desk, until="").content.decode()
    assert lock(desk, why="").status_code == 400
    assert desk.get(reverse("period_lock")).content.decode().count("To the accountant") == 2


def test_drafts_inside_are_told_and_want_a_tick(house):
    Invoice.objects.create(
        business=house.business, farm=house.farm, currency="GBP", tax_point=LAST, drafted_at=NOON
    )
    desk = at_desk(house.owner)
    refused = lock(desk)
    assert refused.status_code == 400
    assert "1 draft lies up to" in refused.content.decode()
    assert locked_until(house.scope) is None
    lock(desk, even_so="on")
    assert locked_until(house.scope) == LAST


def test_the_office_may_look_but_not_lock(house):
    desk = at_desk(house.office)
    assert lock(desk).status_code == 403
    assert locked_until(house.scope) is None
    assert "Only the owner" in desk.get(reverse("period_lock")).content.decode()
    assert "Keep it" not in desk.get(reverse("period_lock")).content.decode()


def test_a_lock_is_for_one_business(house):
    lock(at_desk(house.owner))
    stranger = make_house("Elsewhere Trimming")
    assert "Nothing is locked" in at_desk(stranger.owner).get(reverse("period_lock")).content.decode()

"""A calendar address is closed for good."""

from datetime import timedelta

from tests.factories import NOON
from visits.models import CalendarAddress
from visits.services.make_calendar_address import FeedWish, make_calendar_address
from visits.services.revoke_calendar_address import revoke_calendar_address


def test_a_closed_address_stays_closed_from_the_first_time_on(house):
    made = make_calendar_address(business=house.business, wish=FeedWish("Phone"), at=NOON, by=house.owner)
    for hours in (1, 5):
        revoke_calendar_address(address=made.row, at=NOON + timedelta(hours=hours))
        stored = CalendarAddress.objects.within(house.scope).get()
        assert stored.revoked_at == NOON + timedelta(hours=1)


def test_closing_one_leaves_the_others_open(house):
    first, second = (
        make_calendar_address(business=house.business, wish=FeedWish(name), at=NOON, by=house.owner)
        for name in ("Phone", "Desk")
    )
    revoke_calendar_address(address=first.row, at=NOON)
    assert CalendarAddress.objects.within(house.scope).get(revoked_at__isnull=True) == second.row

"""What the tests of held hours share. The van goes out from eight to five and the farm milks at six and four."""

from datetime import UTC, date, datetime, timedelta

from tests.factories import MONDAY, make_wish
from visits.domain.visit_states import VisitReason
from visits.models import HeldHour
from visits.selectors.farm_offers import farm_offers
from visits.selectors.offer_again import AskedPlace
from visits.services.hold_offer import OfferToHold, asked_for, hold_offer

SUNDAY_EVENING = datetime(2026, 3, 1, 19, tzinfo=UTC)
TUESDAY = date(2026, 3, 3)
HALF_AN_HOUR = timedelta(minutes=30)


def at(clock, day=TUESDAY):
    hour, minute = clock.split(":")
    return datetime(day.year, day.month, day.day, int(hour), int(minute), tzinfo=UTC)


def urgent(**changes):
    return make_wish(
        **{"reason": VisitReason.URGENT, "head_count": 2, "due_until": MONDAY + timedelta(days=2), **changes}
    )


def offers(farm, wish=None, now=SUNDAY_EVENING, weeks=1):
    return farm_offers(asked_for(farm, wish or urgent()), now, weeks)


def place_of(line):
    """What a page sends back of a line."""
    moved = line.moved.visit.pk if line.moved else None
    return AskedPlace(line.van.pk, line.first, line.last, moved, line.to)


def hold(house, line, farm=None, now=SUNDAY_EVENING, wish=None):
    offer = OfferToHold(wish or urgent(), place_of(line))
    return hold_offer(farm=farm or house.farm, offer=offer, at=now, by=house.office)


def held_rows(scope):
    return HeldHour.objects.within(scope)

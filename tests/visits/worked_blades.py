"""Blades that have been at work: what was said of them at the crush, and edges counted by hand."""

from datetime import datetime, timedelta
from uuid import uuid4

from tests.factories import TUESDAY_TEN, House, make_blade, make_cow, put_down, trimmed_foot
from visits.domain.kit.blade_kinds import BladeState, EdgeBefore, SharpenMethod, TurnPart
from visits.models import Blade, BladeSaid, BladeTurn, Sharpening, Visit
from visits.services.kit.settle_blade import settle_blade

LONG_AGO = TUESDAY_TEN - timedelta(days=100)
LASTED = (18, 20, 22, 24, 25, 26, 28, 30, 33)


def say(visit: Visit, at: datetime, **parts: Blade) -> BladeTurn:
    """One word at the crush: `in_hand=red`, `went_dull=blue`."""
    turn = BladeTurn.objects.create(
        business=visit.business, visit=visit, record=uuid4(), at=at, by=visit.van.trimmer
    )
    for part, blade in parts.items():
        BladeSaid.objects.create(business=visit.business, turn=turn, blade=blade, part=TurnPart(part).value)
        settle_blade(blade=blade)
    return turn


def cut(house: House, visit: Visit, *minutes: int, **fields: object) -> None:
    """Cows noted so many minutes after the visit began."""
    for minute in minutes:
        cow = make_cow(house.farm, f"{visit.pk}-{minute}")
        at = (visit.started_at or TUESDAY_TEN) + timedelta(minutes=minute)
        trim = put_down(visit, cow, trimmed_foot(), at=at)
        if fields:
            type(trim).objects.within(trim.scope).filter(pk=trim.pk).update(**fields)


def long_used(house: House, name: str = "Red handle", lasted: tuple[int, ...] = LASTED) -> Blade:
    """A knife whose edges were all dull after so many cows, counted by hand; a new edge is on it."""
    blade = make_blade(house.van, name, bought_on=LONG_AGO.date(), state=BladeState.IN_USE.value)
    for day, cows in enumerate(lasted, start=1):
        Sharpening.objects.create(
            business=house.business,
            blade=blade,
            at=LONG_AGO + timedelta(days=day),
            method=SharpenMethod.BELT.value,
            before=EdgeBefore.DULL.value,
            cows_since_last=cows,
            minutes=6,
        )
    return blade

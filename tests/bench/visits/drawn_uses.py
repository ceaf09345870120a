"""What the demo's generator draws, as the use of each consumable, visit by visit, and when each visit was booked.

Booked as the demo's rows say: a call when the farm rings, everything else six days before; but a re-check no sooner
than the visit of that farm that asked for it, and a visit in place of one called off no sooner than that day.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal

from tests.bench.visits.drawn_months import TODAY
from trimops.portal.demo.demo_files import farm_sketches, rates
from trimops.portal.demo.demo_people import ConsumableSketch, cast, kit
from trimops.portal.demo.invent_history import HistoryMaker, Span
from trimops.portal.demo.past import PastVisit
from visits.domain.kit.forecast.visit_use import BookedVisit, VisitUse
from visits.domain.kit.use_rules import used_by_cow
from visits.domain.visit_states import VisitReason

BOOKED_BEFORE = 6


@dataclass(frozen=True)
class DrawnVisit:
    """A visit as it was booked and since when, and (unless called off) what it used of each consumable, in order."""

    booked: BookedVisit
    known_on: date
    is_made: bool
    uses: tuple[VisitUse, ...]


@dataclass(frozen=True)
class DrawnUses:
    """All visits of a history, oldest first, and the consumables their uses are told of."""

    items: tuple[ConsumableSketch, ...]
    visits: tuple[DrawnVisit, ...]

    def uses_before(self, day: date, item: int) -> list[VisitUse]:
        """What the visits before that day used of one consumable."""
        return [visit.uses[item] for visit in self.visits if visit.booked.day < day]

    def booked_at(self, first: date, last: date) -> list[BookedVisit]:
        """What was booked on the morning of `first` for the days from then to `last`."""
        return [
            visit.booked
            for visit in self.visits
            if first <= visit.booked.day <= last and visit.known_on < first
        ]

    def used_between(self, first: date, last: date, item: int) -> Decimal:
        """What was really used from `first` to `last`."""
        return sum(
            (visit.uses[item].used for visit in self.visits if first <= visit.booked.day <= last), Decimal(0)
        )


def draw_uses(seed: int, months: int = 18, farms: int = 40) -> DrawnUses:
    """Same seed, same history."""
    first = TODAY - timedelta(days=round(months * 365.25 / 12))
    span = Span(first, TODAY, TODAY)
    maker = HistoryMaker(seed, rates(), list(farm_sketches()[:farms]), cast().vans, span)
    for day in maker.days():
        maker.work(day)
    return DrawnUses(kit().consumables, tuple(_told(maker.past.visits)))


def _told(visits: list[PastVisit]) -> Iterator[DrawnVisit]:
    last_there: dict[int, PastVisit] = {}
    for visit in sorted(visits, key=lambda visit: visit.planned):
        day = visit.planned.date()
        known_on = _known_on(visit, last_there.get(visit.farm))
        booked = BookedVisit(
            visit.farm, day, visit.van, visit.head_count, visit.corrective_count, visit.reason
        )
        uses = tuple(_use(visit, (day - known_on).days, item) for item in kit().consumables)
        yield DrawnVisit(booked, known_on, not visit.is_called_off, uses)
        last_there[visit.farm] = visit


def _known_on(visit: PastVisit, before: PastVisit | None) -> date:
    """`before`: the visit of that farm before this one, or the one that was called off."""
    known = visit.planned.date() - timedelta(days=BOOKED_BEFORE)
    if visit.reason is VisitReason.URGENT:
        return max(visit.due_from, known)
    if before is not None and (before.is_called_off or visit.reason is VisitReason.RECHECK):
        return max(known, before.planned.date())
    return known


def _use(visit: PastVisit, notice: int, item: ConsumableSketch) -> VisitUse:
    booked = (visit.head_count, visit.corrective_count)
    if visit.is_called_off:
        return VisitUse(
            visit.farm, visit.planned.date(), 0, 0, Decimal(0), visit.reason, (), booked, notice, False
        )
    by_cow = [used_by_cow({0: item.recipe}, seen.entry).get(0, Decimal(0)) for seen in visit.cows]
    used = [quantity for quantity in by_cow if quantity]
    sizes = tuple((size, used.count(size)) for size in sorted(set(used)))
    lame = min(visit.corrective_count, len(visit.cows))
    return VisitUse(
        visit.farm,
        visit.planned.date(),
        len(visit.cows) - lame,
        lame,
        sum(used, item.per_wash),
        visit.reason,
        sizes,
        booked,
        notice,
    )

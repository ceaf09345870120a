"""Vans and the shifts they go out on in a week, as the planner asks for them."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

from django.db.models import Prefetch

from trimops.accounts.models import Business
from trimops.kernel.clock import at_local, from_to
from trimops.kernel.scope import Scope
from visits.domain.open_pieces import Piece, best_piece, open_pieces
from visits.domain.planning.replan.close_shifts import closed
from visits.domain.planning_figures import PlanningFigures
from visits.domain.visit_states import VisitState
from visits.models import ShiftPattern, Van, Visit
from visits.selectors.public_holidays import days_stayed_in
from visits.selectors.van_absences import Absence, AwayBy, absences_between

LEAST_PART = 0.25
"""Of a day cut by own appointments less than this is no day out."""


def vans_of(scope: Scope) -> list[Van]:
    """The vans that go out, with their shift patterns."""
    patterns = Prefetch("shift_patterns", queryset=ShiftPattern.objects.within(scope))
    return list(Van.objects.within(scope).filter(is_active=True).prefetch_related(patterns).order_by("id"))


def hours_of(figures: PlanningFigures) -> tuple[time, time]:
    """The hours within which anybody works."""
    return _clock(figures.earliest_hour), _clock(figures.latest_hour)


def _clock(hour: float) -> time:
    return time(int(hour), round(hour % 1 * 60))


def shifts_of(
    vans: list[Van], scope: Scope, monday: date, now: datetime, business: Business
) -> Iterator[dict[str, object]]:
    """Each van's shifts of the week that have not begun; without the hours at which it is not there and, where the
    business stays in on them, public holidays."""
    sunday = monday + timedelta(days=6)
    closed_days = days_stayed_in(business, monday, sunday)
    away = _away(business, monday, sunday)
    for van in vans:
        for pattern in van.shift_patterns.all():
            day = monday + timedelta(days=pattern.weekday)
            if day not in closed_days and at_local(day, pattern.starts, business.zone) >= now:
                shift = away.open_part(_shift(van, pattern, day, business), van)
                if shift is not None:
                    yield shift


@dataclass(frozen=True)
class _Away:
    """When the vans are not there in the week, and what is confirmed with them."""

    absences: Sequence[Absence]
    confirmed: Sequence[tuple[int, datetime, datetime]]

    def open_part(self, shift: dict[str, object], van: Van) -> dict[str, object] | None:
        """What is left of the shift; None where nothing of use is.

        Days off and hours out of action cut it to its longest piece. So do the trimmer's own appointments, except that
        a piece with a visit that is confirmed goes before a longer one, and that less than a part of the day is none.
        """
        mine = [each for each in self.absences if each.van == van.pk]
        left: dict[str, object] | None = shift
        for each in mine:
            if each.by is not AwayBy.OWN_CALENDAR:
                left = left and closed(left, each.since, each.until)
        own = [(each.since, each.until) for each in mine if each.by is AwayBy.OWN_CALENDAR]
        return _between(left, own, self._confirmed_of(van)) if left and own else left

    def _confirmed_of(self, van: Van) -> list[Piece]:
        return [(start, finish) for key, start, finish in self.confirmed if key == van.pk]


def _away(business: Business, monday: date, sunday: date) -> _Away:
    absences = absences_between(business, monday, sunday)
    if all(each.by is not AwayBy.OWN_CALENDAR for each in absences):
        return _Away(absences, ())
    rows = Visit.objects.within(Scope(business.pk)).in_state(VisitState.CONFIRMED)
    rows = rows.starting_between(*from_to(monday, sunday, business.zone))
    found = rows.values_list("van_id", "planned_start", "planned_finish")
    return _Away(absences, [(van, start, finish) for van, start, finish in found if van and start and finish])


def _between(
    shift: dict[str, object], taken: Sequence[Piece], confirmed: Sequence[Piece]
) -> dict[str, object] | None:
    start, end = (datetime.fromisoformat(str(shift[side])) for side in ("start", "end"))
    piece = best_piece(open_pieces(start, end, taken), confirmed)
    if piece is None or (piece[1] - piece[0]) < (end - start) * LEAST_PART:
        return None
    begins, ends = (moment.astimezone(start.tzinfo).isoformat() for moment in piece)
    return {**shift, "start": begins, "end": ends}


def _shift(van: Van, pattern: ShiftPattern, day: date, business: Business) -> dict[str, object]:
    def at(clock: time) -> str:
        return at_local(day, clock, business.zone).isoformat()

    shift: dict[str, object] = {
        "id": f"van-{van.pk}-{day}",
        "crew": f"van-{van.pk}",
        "base": f"van-{van.pk}",
        "start": at(pattern.starts),
        "end": at(pattern.ends),
        "max_work_minutes": pattern.max_work_minutes,
        "max_cows": pattern.max_cows,
        "cost_fixed": float(van.cost_per_day * 100),
        "cost_per_work_hour": float(van.cost_per_work_hour * 100),
        "cost_per_km": float(van.cost_per_km * 100),
    }
    if pattern.meal_minutes:
        shift["meal"] = {
            "minutes": pattern.meal_minutes,
            "earliest": at(pattern.meal_earliest),
            "latest": at(pattern.meal_latest),
        }
    return shift

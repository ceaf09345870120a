"""A van's day in the diary, as it is walked through."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from itertools import pairwise

from django.db.models import Count, Max

from farms.domain.working_windows import MilkingTime
from farms.selectors.farm_windows import milkings_by_farm, windows_of
from trimops.accounts.models import Business
from trimops.kernel.clock import at_local, local_day
from trimops.kernel.scope import Scope
from visits.domain.arrival_windows.day_ahead import DayAhead, DayStop, Meal
from visits.domain.arrival_windows.visit_so_far import Expected, SoFar, visit_so_far
from visits.domain.planning_figures import PlanningFigures
from visits.domain.visit_lengths.learned_rule import LearnedRule, likely_length
from visits.domain.visit_states import VisitState
from visits.models import ShiftPattern, Trim, Van, Visit
from visits.selectors.business_figures import figures_of
from visits.selectors.expected_length import asked_of
from visits.selectors.reckoned_drives import ReckonedDrives, base_of, place_of, reckoned_drives
from visits.selectors.week_shifts import hours_of

ROUNDED = 1.0
"""Minutes that a planned gap may lack for a meal: hours of the diary are rounded."""

Milkings = dict[tuple[int, int], list[MilkingTime]]


@dataclass(frozen=True)
class _Known:
    """What every stop of the day needs to know."""

    day: date
    zero: datetime
    business: Business
    figures: PlanningFigures
    drives: ReckonedDrives
    milkings: Milkings
    rule: LearnedRule
    done: dict[int, tuple[int, datetime]]


def begun_first(visit: Visit) -> tuple[bool, datetime]:
    """Sorts a day's visits into the order of driving."""
    return visit.started_at is None, visit.started_at or visit.planned_start or visit.asked_at


def day_ahead(
    business: Business, van: Van, visits: Sequence[Visit], rule: LearnedRule, when: tuple[date, datetime]
) -> DayAhead:
    """The visits of the day, in the order of driving, with their farms at hand; `when` is the day, and now.

    ValueError without visits. Five queries.
    """
    if not visits:
        raise ValueError("a day without visits")
    scope, (day, now) = Scope(business.pk), when
    places = [base_of(van), *(place_of(visit.farm) for visit in visits)]
    figures = figures_of(scope).planning
    drives = reckoned_drives(scope, figures, places)
    zero = at_local(day, time(0), business.zone)
    known = _Known(day, zero, business, figures, drives, milkings_by_farm(scope), rule, _done(scope, visits))
    legs = [drives.minutes(a, b) for a, b in pairwise(places)]
    stops = tuple(_stop(visit, leg, known) for visit, leg in zip(visits, legs, strict=True))
    first = visits[0].planned_start or _hour(visits[0])
    return DayAhead(
        leave=_minutes(first, known) - legs[0],
        stops=stops,
        drive_home=drives.minutes(places[-1], places[0]),
        meal=_meal(van, visits, legs, known),
        now=_minutes(now, known) if local_day(now, business.zone) == day else None,
    )


def _stop(visit: Visit, drive: float, known: _Known) -> DayStop:
    minutes, spread = _length(visit, known)
    windows = [(_minutes(start, known), _minutes(end, known)) for start, end in _windows(visit, known)]
    promised = visit.planned_start if visit.visit_state is VisitState.CONFIRMED else None
    return DayStop(
        drive=drive,
        minutes=minutes,
        spread=spread,
        windows=tuple(windows),
        not_before=_minutes(promised, known) if promised else None,
        done_by=_milking_after(visit, windows, known),
        begun=_minutes(visit.started_at, known) if visit.started_at else None,
        finished=_minutes(visit.finished_at, known) if visit.finished_at else None,
    )


def _length(visit: Visit, known: _Known) -> tuple[float, float]:
    """Minutes and standard deviation; of a visit under way by the cows that are done."""
    likely = likely_length(known.rule, asked_of(visit))
    done = known.done.get(visit.pk)
    if done is None or visit.started_at is None or visit.finished_at is not None:
        return likely.minutes, likely.spread
    cows, last = done
    before = max(0.0, likely.minutes - likely.at_crush - likely.after)
    expected = Expected(before, likely.at_crush, likely.after, likely.cows, likely.spread)
    return visit_so_far(expected, SoFar(cows, max(0.0, (last - visit.started_at) / timedelta(minutes=1))))


def _done(scope: Scope, visits: Sequence[Visit]) -> dict[int, tuple[int, datetime]]:
    """Of the visits under way: cows done, and when the last was put down."""
    begun = [visit.pk for visit in visits if visit.started_at and not visit.finished_at]
    rows = Trim.objects.within(scope).filter(visit_id__in=begun).values_list("visit_id").order_by()
    return {pk: (cows, last) for pk, cows, last in rows.annotate(cows=Count("id"), last=Max("recorded_at"))}


def _windows(visit: Visit, known: _Known) -> list[tuple[datetime, datetime]]:
    hours = hours_of(known.figures)
    return windows_of(visit.farm, known.day, known.business.zone, _milkings(visit, known), hours)


def _milking_after(visit: Visit, windows: Sequence[tuple[float, float]], known: _Known) -> float | None:
    """When the cows are wanted for the milking after its hour; None where the working day ends first."""
    hour = _minutes(_hour(visit), known)
    end = next((end for _, end in windows if end > hour), None)
    evening = at_local(known.day, hours_of(known.figures)[1], known.business.zone)
    return end if end is not None and end < _minutes(evening, known) else None


def _milkings(visit: Visit, known: _Known) -> list[MilkingTime]:
    return known.milkings.get((visit.farm_id, known.day.weekday()), [])


def _meal(van: Van, visits: Sequence[Visit], legs: Sequence[float], known: _Known) -> Meal | None:
    patterns = ShiftPattern.objects.within(Scope(known.business.pk)).filter(van=van)
    pattern = patterns.filter(weekday=known.day.weekday()).first()
    if pattern is None or not pattern.meal_minutes:
        return None
    earliest, latest = (
        _minutes(at_local(known.day, clock, known.business.zone), known)
        for clock in (pattern.meal_earliest, pattern.meal_latest)
    )
    return Meal(pattern.meal_minutes, earliest, latest, _room(visits, legs, earliest, pattern, known))


def _room(
    visits: Sequence[Visit], legs: Sequence[float], earliest: float, pattern: ShiftPattern, known: _Known
) -> int | None:
    """The first stop before which the diary has room for the meal after its earliest minute; None where it has none."""
    free = None
    for at, (visit, leg) in enumerate(zip(visits, legs, strict=True)):
        if visit.planned_start is None or visit.planned_finish is None:
            return None
        gap = _minutes(visit.planned_start, known) - leg - max(earliest, free) if free is not None else 0.0
        if gap >= pattern.meal_minutes - ROUNDED:
            return at
        free = _minutes(visit.planned_finish, known)
    return len(visits) if free is not None and free >= earliest else None


def _minutes(at: datetime, known: _Known) -> float:
    return (at - known.zero.astimezone(UTC)) / timedelta(minutes=1)


def _hour(visit: Visit) -> datetime:
    at = visit.started_at or visit.planned_start
    if at is None:
        raise ValueError(f"visit {visit.pk} has no hour")
    return at

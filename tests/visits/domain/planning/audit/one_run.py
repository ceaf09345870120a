"""A week of two sites and two shifts, and runs on it, built without any document."""

from dataclasses import replace
from fractions import Fraction
from zoneinfo import ZoneInfo

from visits.domain.planning.audit.legs import TableLegs
from visits.domain.planning.audit.plan import ToldMeal, ToldShift, ToldStop
from visits.domain.planning.audit.runs import Run, lay_out
from visits.domain.planning.audit.values import MINUTE
from visits.domain.planning.audit.week import Fixed, Job, MealRule, Shift, Week, Window


def clock(hours: float) -> int:
    """That many hours after midnight on 1 January 1970 UTC."""
    return round(hours * 60 * MINUTE)


def shift(**changes) -> Shift:
    plain = Shift("s", "ann", "yard", clock(7), clock(17), None, None, None, *[Fraction(0)] * 3)
    return replace(plain, **changes)


def job(name: str, site: str = "low", **changes) -> Job:
    whole_day = (Window(clock(0), clock(24)),)
    plain = Job(name, site, clock(1), 5, whole_day, None, None, Fraction(0), None, None)
    return replace(plain, **changes)


def a_week(*jobs: Job, on: Shift | None = None) -> Week:
    """Half an hour and 20 km between any two places; "low" has hygiene 0, "high" has 2."""
    places = {"yard": 0, "low": 1, "high": 2}
    times, metres = [[clock(0.5)] * 3] * 3, [[Fraction(20_000)] * 3] * 3
    legs = TableLegs(places, times, metres)
    held = on or shift()
    return Week(ZoneInfo("UTC"), legs, {"low": 0, "high": 2}, {held.id: held}, {one.id: one for one in jobs})


def told(
    *stops: tuple[str, float], leave: float = 8, back: float = 16, meal: float | None = None
) -> ToldShift:
    """Stops as (job, start in hours): one hour of work each, arriving as it starts."""
    lines = tuple(
        ToldStop(
            f"stops[{place}]", name, clock(at), clock(at), clock(at + 1), clock(0.5), Fraction(20_000), 0
        )
        for place, (name, at) in enumerate(stops)
    )
    eaten = None if meal is None else ToldMeal("meal", clock(meal), clock(meal + 0.5))
    km = Fraction(20_000 * (len(stops) + 1))
    return ToldShift(
        "run", "s", clock(leave), clock(back), clock(back - leave), km, 5 * len(stops), eaten, lines
    )


def a_run(week: Week, *stops: tuple[str, float], **times) -> Run:
    run = lay_out(week, told(*stops, **times))
    assert run is not None
    return run


__all__ = ["Fixed", "MealRule", "a_run", "a_week", "clock", "job", "shift", "told"]

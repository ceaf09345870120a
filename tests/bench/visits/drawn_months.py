"""The months that the demo's generator draws, as visits to learn from and days to tell beforehand.

The generator puts lengths together from feet, lesions, gates, helpers, weather and crush trouble
(`trimops/portal/demo/invent_length.py`); it knows nothing of the rule that is learned, and the rule nothing of it.
"""

from collections import Counter, defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from math import hypot

from trimops.portal.demo.demo_files import FarmSketch, farm_sketches, rates
from trimops.portal.demo.demo_people import cast
from trimops.portal.demo.invent_history import CIRCUITY, FIRST_MINUTE, KMH, LEG_MINUTES, HistoryMaker, Span
from trimops.portal.demo.past import Past, PastVisit
from visits.domain.actions import TrimKind
from visits.domain.arrival_windows.day_ahead import Meal
from visits.domain.arrival_windows.learn_drives import Driven
from visits.domain.visit_length import FarmSetup
from visits.domain.visit_lengths.finished_visit import Asked, FinishedVisit, Work

TODAY = date(2026, 11, 23)
LEAVE = FIRST_MINUTE
MEAL = Meal(30, 11.5 * 60, 14 * 60)


@dataclass(frozen=True)
class Made:
    """A visit that was made, the drive to it as reckoned, and when it was planned and begun (minutes of the day).

    `let_go` are the minutes after the start at which its cows were done.
    """

    visit: FinishedVisit
    drive: float
    planned: float
    begun: float
    let_go: tuple[float, ...]


@dataclass(frozen=True)
class MadeDay:
    day: date
    stops: tuple[Made, ...]


def draw_months(seed: int, months: int = 18, farms: int = 40) -> list[MadeDay]:
    """Every van's day of the history, oldest first. Same seed, same months."""
    sketches = list(farm_sketches()[:farms])
    first = TODAY - timedelta(days=round(months * 365.25 / 12))
    maker = HistoryMaker(seed, rates(), sketches, cast().vans, Span(first, TODAY, TODAY))
    for day in maker.days():
        maker.work(day)
    return list(_days(maker.past, sketches))


def visits_of(days: list[MadeDay]) -> list[FinishedVisit]:
    return [made.visit for day in days for made in day.stops]


def drives_of(days: list[MadeDay]) -> tuple[list[Driven], list[tuple[float, float]]]:
    """Drives that cannot hold the meal, and how late each day's first farm was reached."""
    between = []
    for day in days:
        for before, after in zip(day.stops, day.stops[1:], strict=False):
            left = before.begun + before.visit.minutes
            if after.begun < 10.5 * 60 or left > 14.5 * 60:
                between.append(Driven(after.drive, after.begun - left))
    return between, [(day.stops[0].drive, day.stops[0].begun - day.stops[0].planned) for day in days]


def _days(past: Past, sketches: list[FarmSketch]) -> Iterator[MadeDay]:
    found: dict[tuple[date, int], list[PastVisit]] = defaultdict(list)
    for visit in past.visits:
        if visit.is_done:
            found[visit.start.date(), visit.van].append(visit)
    for (day, van), visits in sorted(found.items(), key=lambda pair: pair[0]):
        base = cast().vans[van]
        here, stops = (base.east_km, base.north_km), []
        for visit in sorted(visits, key=lambda visit: visit.start):
            place = (sketches[visit.farm].east_km, sketches[visit.farm].north_km)
            stops.append(_made(visit, sketches[visit.farm], _drive(here, place)))
            here = place
        yield MadeDay(day, tuple(stops))


def _made(visit: PastVisit, sketch: FarmSketch, drive: float) -> Made:
    kinds = Counter(cow.entry.kind for cow in visit.cows)
    blocks = sum(len(list(foot.blocks())) for cow in visit.cows for foot in cow.entry.feet)
    work = Work(kinds[TrimKind.FUNCTIONAL], kinds[TrimKind.CORRECTIVE], kinds[TrimKind.CHECK], blocks)
    lame = min(visit.corrective_count, visit.head_count)
    asked = Asked(visit.farm, visit.van, _setup(sketch), visit.head_count, lame)
    finished = FinishedVisit(asked, visit.start.date(), visit.minutes, work)
    planned, begun = (at.hour * 60 + at.minute for at in (visit.planned, visit.start))
    # Starts are kept in whole minutes; half a minute more is the middle of what they can have been.
    return Made(finished, drive, planned, begun + 0.5, tuple(cow.minute for cow in visit.cows))


def _setup(sketch: FarmSketch) -> FarmSetup:
    return FarmSetup(
        sketch.crush == "on_site",
        sketch.hard_standing,
        sketch.water,
        sketch.power != "none",
        sketch.light,
        sketch.hygiene,
    )


def _drive(a: tuple[float, float], b: tuple[float, float]) -> float:
    return hypot(a[0] - b[0], a[1] - b[1]) * CIRCUITY / KMH * 60 + LEG_MINUTES

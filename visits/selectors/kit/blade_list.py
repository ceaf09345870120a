"""All blades of a van on one page: what is left on each edge, what to grind before which day, how many to carry."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime

from trimops.accounts.models import Business
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from trimops.paper.to_svg import to_svg
from visits.documents.kit.edge_bar import EdgeBar, edge_bar
from visits.domain.kit.blade_hours import BladeHours
from visits.domain.kit.blade_kinds import BladeState
from visits.domain.kit.edge_log import last_in_hand
from visits.models import Blade
from visits.selectors.kit.blade_grinding import (
    Grinding,
    GrindingDay,
    JobGrinding,
    VanGrinding,
    chosen_van,
    grinding_ahead,
)
from visits.selectors.kit.blade_words import (
    Mark,
    day_name,
    edge_words,
    interval_words,
    of_100,
    state_mark,
    van_answer,
)
from visits.selectors.kit.disc_hours import disc_hours
from visits.selectors.kit.van_edges import BladeEdge

SVG_CLASS = "cover-bar"


@dataclass(frozen=True)
class BladeLine:
    """One blade on the list; `bar` is an SVG, empty for one that may not cut."""

    edge: BladeEdge
    mark: Mark
    words: str
    doubt: str
    is_in_hand: bool
    hours: BladeHours | None
    bar: str

    @property
    def blade(self) -> Blade:
        return self.edge.blade


@dataclass(frozen=True)
class DayLine:
    """One day of one job: its name and the plan; `job_words` are empty for the job that most cows want."""

    name: str
    job_words: str
    day: GrindingDay

    @property
    def chance(self) -> str:
        return of_100(self.day.plan.chance)

    @property
    def chance_unground(self) -> str:
        return of_100(self.day.plan.chance_unground)


@dataclass(frozen=True)
class BladeList:
    """`answer` is the title; `grinding` None: there is no van. `minutes` is how long the next grinding takes."""

    grinding: VanGrinding | None
    answer: str
    lines: tuple[BladeLine, ...]
    gone: tuple[BladeLine, ...]
    days: tuple[DayLine, ...]
    minutes: float | None
    limit: float
    is_guess: bool


@dataclass(frozen=True)
class BladePlaces:
    """All vans to choose from, the list of the one chosen; `spare` is what lies in the store."""

    chosen: BladeList
    vans: tuple[VanGrinding, ...]
    spare: tuple[BladeLine, ...]
    has_any: bool


def blade_places(
    scope: Scope, business: Business, now: datetime, wish: int | None, driver: int
) -> BladePlaces:
    """The van that is wished for, else the one that `driver` (a person) drives, else the first. Ten queries."""
    grinding = grinding_ahead(scope, business, now)
    chosen = chosen_van(grinding, wish, driver)
    today, spare = local_day(now, business.zone), grinding.known.of_van(None)
    return BladePlaces(
        _list(grinding, chosen, now, today),
        grinding.vans,
        tuple(_line(grinding, edge, frozenset(), _longest(spare)) for edge in spare),
        bool(grinding.known.on),
    )


def _list(grinding: Grinding, van: VanGrinding | None, now: datetime, today: date) -> BladeList:
    known = grinding.known
    edges = known.of_van(van.van.pk) if van else []
    held = last_in_hand(known.logs.turns, van.van.pk, now) if van else frozenset()
    longest = _longest(edges)
    lines = [_line(grinding, edge, held, longest) for edge in edges]
    to_grind = van.to_grind(van.first_grinding) if van and van.first_grinding else []
    return BladeList(
        grinding=van,
        answer=van_answer(van, edges, today) if van and edges else "No knife is on the list yet",
        lines=tuple(line for line in lines if line.blade.state != BladeState.RETIRED),
        gone=tuple(line for line in lines if line.blade.state == BladeState.RETIRED),
        days=tuple(
            DayLine(day_name(day.day, today), _job_words(job) if number else "", day)
            for number, job in enumerate(van.jobs if van else ())
            for day in job.days
        ),
        minutes=grinding.minutes_each * len(to_grind) if grinding.minutes_each and to_grind else None,
        limit=known.figures.dull_percent,
        is_guess=any(job.is_guess for job in van.jobs) if van else False,
    )


def _job_words(job: JobGrinding) -> str:
    return f"{job.kind.label}, {job.hand.label}".lower()


def _line(grinding: Grinding, edge: BladeEdge, held: frozenset[int], longest: int) -> BladeLine:
    drawing = edge_bar(_bar(edge), longest, f"{edge.blade.name}: {edge_words(edge)}")
    hours = disc_hours(grinding.known.logs, edge.blade)
    is_up = hours is not None and hours.is_over and edge.may_cut
    return BladeLine(
        edge,
        ("due", "Replace it") if is_up else state_mark(edge),
        edge_words(edge),
        interval_words(edge),
        edge.blade.pk in held and edge.may_cut,
        hours,
        to_svg(drawing, SVG_CLASS) if _has_bar(edge) else "",
    )


def _bar(edge: BladeEdge) -> EdgeBar:
    outlook = edge.outlook
    return EdgeBar(
        edge.edge.cows,
        outlook.sure,
        outlook.low,
        outlook.middle,
        outlook.high,
        is_dull=outlook.is_dull or edge.edge.is_over,
        has_interval=not edge.life.is_practice,
    )


def _longest(edges: Iterable[BladeEdge]) -> int:
    """How far the longest bar reaches, in cows."""
    return max((_bar(edge).end for edge in edges if _has_bar(edge)), default=0)


def _has_bar(edge: BladeEdge) -> bool:
    return edge.may_cut and edge.is_counted

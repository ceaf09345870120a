"""What to grind before which day, and how many knives to carry: the booked visits against the edges of each van."""

import math
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from django.db.models import Avg

from trimops.accounts.models import Business
from trimops.kernel.clock import from_to, local_day
from trimops.kernel.scope import Scope
from visits.domain.kit.blade_kinds import BladeKind, Hand, SharpenMethod
from visits.domain.kit.edge_curve import EDGES_ENOUGH
from visits.domain.kit.grinding_plan import DayOfCows, DayPlan, grinding_plan, knives_needed
from visits.domain.visit_states import VisitState
from visits.models import Blade, Sharpening, Van, Visit
from visits.selectors.kit.van_edges import BladeEdge, Job, KnownEdges, known_edges

AHEAD_DAYS, SHARE_DAYS = 7, 90
LEAST_SHARE = 0.05


@dataclass(frozen=True)
class GrindingDay:
    """One day of one job: the plan, the blades it names, and how many freshly ground ones would do where all of the
    van's do not (None: more than a dozen)."""

    plan: DayPlan
    grind: tuple[Blade, ...]
    carry: tuple[Blade, ...]
    needed: int | None

    @property
    def day(self) -> date:
        return self.plan.day


@dataclass(frozen=True)
class JobGrinding:
    """The days ahead for the blades of one kind and hand. `share` of the cows are cut with one of them; `is_guess`
    where nobody noted which blades are in hand."""

    kind: BladeKind
    hand: Hand
    share: float
    is_guess: bool
    edges: tuple[BladeEdge, ...]
    days: tuple[GrindingDay, ...]


@dataclass(frozen=True)
class VanGrinding:
    """The days ahead of one van."""

    van: Van
    jobs: tuple[JobGrinding, ...]

    @property
    def first_day(self) -> date | None:
        """The first day on which it goes out."""
        return min((day.day for job in self.jobs for day in job.days), default=None)

    def to_grind(self, day: date) -> list[Blade]:
        """What is to be ground before that day, whatever the job."""
        return [blade for job in self.jobs for each in job.days if each.day == day for blade in each.grind]

    @property
    def first_grinding(self) -> date | None:
        """The first day before which something is to be ground."""
        return min((day.day for job in self.jobs for day in job.days if day.grind), default=None)


@dataclass(frozen=True)
class Grinding:
    """Each van that goes out, and how many minutes a sharpening at home takes on average (None: never noted)."""

    known: KnownEdges
    vans: tuple[VanGrinding, ...]
    minutes_each: float | None


def grinding_ahead(scope: Scope, business: Business, now: datetime) -> Grinding:
    """The plan of the next seven days from today on, by the visits that are planned and not begun. Ten queries."""
    known = known_edges(scope, now)
    booked = _booked(scope, business, now)
    vans = Van.objects.within(scope).filter(is_active=True)
    plans = tuple(VanGrinding(van, _jobs(known, van, booked.get(van.pk, {}), now)) for van in vans)
    at_home = Sharpening.objects.within(scope).exclude(method=SharpenMethod.SENT_AWAY.value)
    minutes = at_home.aggregate(mean=Avg("minutes"))["mean"]
    return Grinding(known, plans, float(minutes) if minutes is not None else None)


def chosen_van(grinding: Grinding, wish: int | None, driver: int) -> VanGrinding | None:
    """The van that is wished for, else the one that `driver` (a person) drives, else the first."""
    by_wish = (each for each in grinding.vans if each.van.pk == wish)
    by_driver = (each for each in grinding.vans if each.van.trimmer_id == driver)
    return next(by_wish, None) or next(by_driver, None) or next(iter(grinding.vans), None)


def _booked(scope: Scope, business: Business, now: datetime) -> dict[int, dict[date, int]]:
    """Van -> day -> cows of the visits that are planned and not begun."""
    today = local_day(now, business.zone)
    start, end = from_to(today, today + timedelta(days=AHEAD_DAYS - 1), business.zone)
    rows = Visit.objects.within(scope).in_state(VisitState.PLANNED, VisitState.CONFIRMED)
    found: defaultdict[int, defaultdict[date, int]] = defaultdict(lambda: defaultdict(int))
    rows = rows.starting_between(start, end)
    for van, begins, heads in rows.values_list("van_id", "planned_start", "head_count"):
        if van and begins:
            found[van][local_day(begins, business.zone)] += heads
    return {van: dict(days) for van, days in found.items()}


def _jobs(known: KnownEdges, van: Van, booked: Mapping[date, int], now: datetime) -> tuple[JobGrinding, ...]:
    edges = [edge for edge in known.of_van(van.pk) if edge.may_cut]
    shares = _shares(known, van, now - timedelta(days=SHARE_DAYS))
    guess = {} if shares else _most_likely(edges)
    found = []
    for job, share in sorted((shares or guess).items(), key=lambda item: -item[1]):
        mine = tuple(edge for edge in edges if edge.job == job)
        if share >= LEAST_SHARE and _is_planned(job, mine):
            days = _days(mine, booked, share, known.limit)
            found.append(JobGrinding(*job, share, not shares, mine, days))
    return tuple(found)


def _is_planned(job: Job, edges: Sequence[BladeEdge]) -> bool:
    """Discs are watched by their hours; only where enough of their edges went dull can grinding them be planned."""
    return bool(edges) and (
        not job[0].is_turned or any(edge.life.dull_edges >= EDGES_ENOUGH for edge in edges)
    )


def _shares(known: KnownEdges, van: Van, since: datetime) -> dict[Job, float]:
    """Of the cows of a van since then at which any blade was in hand, the share cut with one of each job."""
    seen: defaultdict[Job, set[int]] = defaultdict(set)
    for blade, cows in known.logs.cows.items():
        job = known.on[blade].job
        seen[job].update(id(cow) for cow in cows if cow.van == van.pk and cow.at >= since)
    cut = len(set().union(*seen.values()))
    return {job: len(cows) / cut for job, cows in seen.items() if cows} if cut else {}


def _most_likely(edges: Sequence[BladeEdge]) -> dict[Job, float]:
    """Where nothing was noted yet: the knives there are most of, for every cow."""
    jobs = [edge.job for edge in edges if not edge.job[0].is_turned]
    return {max(sorted(set(jobs)), key=jobs.count): 1.0} if jobs else {}


def _days(
    edges: Sequence[BladeEdge], booked: Mapping[date, int], share: float, limit: float
) -> tuple[GrindingDay, ...]:
    blades = {edge.blade.pk: edge.blade for edge in edges}
    days = [DayOfCows(day, math.ceil(heads * share - 1e-9)) for day, heads in booked.items()]
    plans = grinding_plan([edge.now() for edge in edges], days, limit)
    return tuple(
        GrindingDay(
            plan,
            tuple(blades[pk] for pk in plan.grind),
            tuple(blades[pk] for pk in plan.carry),
            None if plan.is_held else knives_needed(edges[0].fresh, plan.cows, limit),
        )
        for plan in plans
    )

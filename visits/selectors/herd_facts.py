"""All that is known of one herd's feet, read in a fixed number of queries as plain values."""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from functools import cache
from itertools import groupby
from operator import attrgetter, itemgetter
from typing import NamedTuple
from zoneinfo import ZoneInfo

from farms.domain.cow_status import CowStatus
from farms.models import Cow, Farm
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.domain.actions import ActionKind, BlockKind
from visits.domain.feet import Claw, Foot, ZoneMap
from visits.domain.herd.facts import (
    BlockOn,
    Calved,
    CowLife,
    CowSeen,
    FootSeen,
    HerdFacts,
    HerdScored,
    LesionSeen,
    RecheckTold,
)
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.mobility import MobilityScale, is_lame
from visits.domain.visit_states import VisitReason
from visits.models import Block, ClawAction, MobilityScoring, Recheck, Trim

# A block taken off ends a treatment and begins none.
PLAIN = frozenset(
    {ActionKind.LENGTH, ActionKind.BALANCE, ActionKind.MODEL, ActionKind.NO_CUT, ActionKind.BLOCK_OFF}
)
TREATING = [kind.value for kind in ActionKind if kind not in PLAIN]
FEET = {foot.value: foot for foot in Foot}
# Most feet are clear, so each kind of clear foot is made once.
CLEAR = {
    (foot.value, is_treated): FootSeen(foot, (), is_treated) for foot in Foot for is_treated in (False, True)
}
SEEN = (
    *("id", "cow_id", "visit_id", "visit__reason", "recorded_at", "mobility_scale", "mobility_score"),
    *("feet__id", "feet__foot"),
    *("feet__findings__lesion", "feet__findings__claw", "feet__findings__zone"),
    *("feet__findings__severity", "feet__findings__dd_stage", "feet__findings__zone_map"),
)
LIVES = (
    *("id", "number", "status", "entered_on", "left_on", "born_on"),
    *("calvings__calved_on", "calvings__lactation"),
)
BLOCKS = ("cow_id", "foot", "claw", "kind", "put_on", "off_due", "off_on")
RECHECKS = (
    *("cow_id", "foot", "from_trim__recorded_at", "due_from", "due_until"),
    *("closed_by_trim__recorded_at", "closed_on", "closed_because"),
)
SCORES = ("id", "scored_on", "scale", "whole_herd", "scores__score")


class SeenRow(NamedTuple):
    """A row of `SEEN`: one lesion of one foot of one trim; what is on the right is None where there is none."""

    trim: int
    cow: int
    visit: int
    reason: str
    at: datetime
    scale: str
    score: int | None
    foot_id: int | None
    foot: str
    lesion: str | None
    claw: str
    zone: int | None
    severity: int
    stage: str
    zone_map: str


class LifeRow(NamedTuple):
    """A row of `LIVES`: one calving of one cow, or the cow alone."""

    cow: int
    number: str
    status: str
    entered: date | None
    left: date | None
    born: date | None
    calved: date | None
    lactation: int | None


@dataclass(frozen=True)
class Reading:
    """Whose rows are read, of which farm, up to which day."""

    scope: Scope
    farm: Farm
    today: date

    @property
    def zone(self) -> ZoneInfo:
        return self.farm.business.zone


def herd_facts(scope: Scope, farm: Farm, today: date) -> HerdFacts:
    """The herd's facts up to and with `today`, in six queries. Bulls are left out."""
    reading = Reading(scope, farm, today)
    seen = tuple(cows_seen(reading))
    lives = tuple(lives_of(reading, seen))
    known = {life.cow for life in lives}
    return HerdFacts(
        today=today,
        cows=lives,
        seen=tuple(cow for cow in seen if cow.cow in known),
        blocks=tuple(block for block in _blocks(reading) if block.cow in known),
        rechecks=tuple(told for told in _rechecks(reading) if told.cow in known),
        scorings=tuple(_scorings(reading)),
        herd_size=farm.herd_size,
        country=farm.business.country,
    )


def cows_seen(reading: Reading) -> Iterator[CowSeen]:
    """Every cow at the crush with her feet, in order of time. Two queries."""
    treated = _treated_feet(reading)
    rows = Trim.objects.within(reading.scope).filter(visit__farm=reading.farm)
    rows = rows.order_by("recorded_at", "id", "feet__id", "feet__findings__id")
    lines = map(SeenRow._make, rows.values_list(*SEEN))
    for _, told in groupby(lines, attrgetter("trim")):
        trim = list(told)
        first, day = trim[0], local_day(trim[0].at, reading.zone)
        if day <= reading.today:
            feet = tuple(_feet(trim, treated))
            yield CowSeen(first.cow, day, first.visit, VisitReason(first.reason), feet, _walks_lame(first))


def _walks_lame(row: SeenRow) -> bool | None:
    if row.score is None or not row.scale:
        return None
    return is_lame(MobilityScale(row.scale), row.score)


def _treated_feet(reading: Reading) -> frozenset[int]:
    rows = ClawAction.objects.within(reading.scope).filter(
        trimmed_foot__trim__visit__farm=reading.farm, kind__in=TREATING
    )
    return frozenset(rows.values_list("trimmed_foot_id", flat=True))


def _feet(trim: list[SeenRow], treated: frozenset[int]) -> Iterator[FootSeen]:
    for foot_id, told in groupby(trim, attrgetter("foot_id")):
        if foot_id is None:
            continue
        rows = list(told)
        if rows[0].lesion is None:
            yield CLEAR[rows[0].foot, foot_id in treated]
            continue
        lesions = tuple(
            _lesion(row.lesion, row.claw, row.zone, row.severity, row.stage, row.zone_map)
            for row in rows
            if row.lesion
        )
        yield FootSeen(FEET[rows[0].foot], lesions, foot_id in treated)


@cache
def _lesion(lesion: str, claw: str, zone: int | None, severity: int, stage: str, zone_map: str) -> LesionSeen:
    """There are few different ones, so each is made once."""
    return LesionSeen(
        LesionCode(lesion), Claw(claw), zone, severity, DDStage(stage) if stage else None, ZoneMap(zone_map)
    )


def lives_of(reading: Reading, seen: Iterable[CowSeen]) -> Iterator[CowLife]:
    """The cows' times in the herd: all that ever were adults there, with their calvings. One query."""
    looked_at: dict[int, list[date]] = defaultdict(list)
    for cow in seen:
        looked_at[cow.cow].append(cow.day)
    rows = Cow.objects.within(reading.scope).filter(farm=reading.farm).exclude(status=CowStatus.BULL.value)
    rows = rows.order_by("id", "calvings__calved_on")
    lines = map(LifeRow._make, rows.values_list(*LIVES))
    for cow, told in groupby(lines, attrgetter("cow")):
        life = _life(list(told), looked_at.get(cow, []), reading.today)
        if life is not None:
            yield life


def _life(told: list[LifeRow], seen: list[date], today: date) -> CowLife | None:
    """None for a heifer that was never at the crush, and for a cow whose first day is still to come."""
    row, status = told[0], CowStatus(told[0].status)
    calvings = tuple(
        Calved(each.calved, each.lactation) for each in told if each.calved and each.calved <= today
    )
    is_heifer = status is CowStatus.HEIFER
    first, left = _first_day(calvings, row.entered, seen, is_heifer=is_heifer), row.left
    if first is None and not is_heifer and left is None:
        first = today
    if first is None or first > today:
        return None
    if left is None and not status.is_on_farm:
        left = _last_known(calvings, seen, first) + timedelta(days=1)
    return CowLife(row.cow, row.number, first, left, row.born, calvings)


def _first_day(
    calvings: tuple[Calved, ...], entered: date | None, seen: list[date], *, is_heifer: bool
) -> date | None:
    """The first day known as an adult: a heifer's time on the list before her first calf does not count."""
    was_heifer = is_heifer or bool(calvings and calvings[0].lactation == 1)
    days = [*(calved.day for calved in calvings[:1]), *seen[:1]]
    if entered and not was_heifer:
        days.append(entered)
    return min(days, default=None)


def _last_known(calvings: tuple[Calved, ...], seen: list[date], first: date) -> date:
    """For a cow that left on a day nobody told: the last day on which she was surely there."""
    return max([first, *(calved.day for calved in calvings), *seen])


def _blocks(reading: Reading) -> Iterator[BlockOn]:
    rows = Block.objects.within(reading.scope).filter(cow__farm=reading.farm, put_on__lte=reading.today)
    for cow, foot, claw, kind, put_on, off_due, off_on in rows.order_by("put_on", "id").values_list(*BLOCKS):
        off = off_on if off_on and off_on <= reading.today else None
        yield BlockOn(cow, Foot(foot), Claw(claw), BlockKind(kind), put_on, off_due, off)


def _rechecks(reading: Reading) -> Iterator[RecheckTold]:
    rows = Recheck.objects.within(reading.scope).filter(farm=reading.farm).order_by("due_until", "id")
    for cow, foot, booked_at, due_from, due_until, looked_at, closed, why in rows.values_list(*RECHECKS):
        booked = local_day(booked_at, reading.zone)
        if booked > reading.today:
            continue
        is_closed = closed is not None and closed <= reading.today
        looked = local_day(looked_at, reading.zone) if looked_at and is_closed else None
        shut = (closed, why) if is_closed else (None, "")
        yield RecheckTold(cow, Foot(foot), booked, due_from, due_until, looked, *shut)


def _scorings(reading: Reading) -> Iterator[HerdScored]:
    rows = MobilityScoring.objects.within(reading.scope)
    rows = rows.filter(farm=reading.farm, scored_on__lte=reading.today)
    rows = rows.order_by("scored_on", "id", "scores__id")
    for _, lines in groupby(rows.values_list(*SCORES), itemgetter(0)):
        told = list(lines)
        _, day, scale, whole, _ = told[0]
        scores = tuple(score for *_, score in told if score is not None)
        yield HerdScored(day, MobilityScale(scale), scores, whole)

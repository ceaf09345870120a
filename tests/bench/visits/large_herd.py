"""A large herd over many years, put straight into the tables: every cow at three whole-herd rounds a year."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from random import Random

from farms.models import Calving, Cow, Farm
from tests.factories import House, make_house
from visits.domain.actions import ActionKind, TrimKind
from visits.domain.feet import Claw, Foot
from visits.domain.mobility import MobilityScale
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import (
    Block,
    ClawAction,
    Finding,
    MobilityScore,
    MobilityScoring,
    Recheck,
    Trim,
    TrimmedFoot,
    Visit,
)

BATCH = 900
ROUNDS_A_YEAR = 3
DAYS_OF_A_ROUND = 10
LEAVE_IN_A_YEAR = 0.27
LESIONS = (("SU", Claw.LATERAL, 4), ("WLF", Claw.LATERAL, 3), ("DD", Claw.SKIN, 10), ("SH", Claw.LATERAL, 5))
WITH_LESION, FORE_FEET = 0.2, 0.4
HINDS, FORES = (Foot.LEFT_HIND, Foot.RIGHT_HIND), (Foot.LEFT_FORE, Foot.RIGHT_FORE)


@dataclass(frozen=True)
class Wanted:
    """How large, how long, up to which day."""

    cows: int = 900
    years: int = 10
    today: date = date(2026, 11, 30)

    @property
    def first(self) -> date:
        return self.today - timedelta(days=round(self.years * 365.25))


@dataclass
class Life:
    """A place in the herd: one cow after the other stands in it."""

    cow: Cow
    came: date


def large_herd(wanted: Wanted) -> House:
    """The house whose farm has that history."""
    house, chance = make_house(), Random(1)
    house.farm.herd_size = wanted.cows
    house.farm.save()
    lives, calvings = _lives(house.farm, wanted, chance)
    Cow.objects.bulk_create([life.cow for life in lives], batch_size=BATCH)
    Calving.objects.bulk_create(calvings, batch_size=BATCH)
    trims = [trim for visit, there in _visits(house, lives, wanted) for trim in _trims(house, visit, there)]
    Trim.objects.bulk_create(trims, batch_size=BATCH)
    _store_feet(trims, chance)
    _store_scores(house, lives, wanted, chance)
    return house


def _lives(farm: Farm, wanted: Wanted, chance: Random) -> tuple[list[Life], list[Calving]]:
    lives: list[Life] = []
    calvings: list[Calving] = []
    for _ in range(wanted.cows):
        came = wanted.first - timedelta(days=chance.randrange(1, 1200))
        while came <= wanted.today:
            left = max(came, wanted.first) + timedelta(
                days=round(chance.expovariate(LEAVE_IN_A_YEAR / 365.25)) + 1
            )
            gone = left <= wanted.today
            cow = Cow(business=farm.business, farm=farm, number=f"{len(lives) + 1}", entered_on=came)
            cow.status, cow.left_on = ("sold", left) if gone else ("milking", None)
            lives.append(Life(cow, came))
            days = range(0, (min(left, wanted.today) - came).days, 390)
            calvings += [
                Calving(business=farm.business, cow=cow, calved_on=came + timedelta(days=d), lactation=n)
                for n, d in enumerate(days, 1)
            ]
            came = left
    return lives, calvings


def _visits(house: House, lives: list[Life], wanted: Wanted) -> Iterator[tuple[Visit, list[Cow]]]:
    """Each round over some days, a part of the herd a day."""
    for number in range(wanted.years * ROUNDS_A_YEAR):
        first = wanted.first + timedelta(days=30 + number * round(365.25 / ROUNDS_A_YEAR))
        there = [life.cow for life in lives if life.came <= first and not _has_left(life.cow, first)]
        for part in range(DAYS_OF_A_ROUND):
            at = datetime.combine(first + timedelta(days=part), time(9), UTC)
            visit = Visit(business=house.business, farm=house.farm, reason=VisitReason.ROUTINE.value)
            visit.state, visit.van, visit.asked_at, visit.changed_at = (
                VisitState.FINISHED.value,
                house.van,
                at,
                at,
            )
            visit.due_from = visit.due_until = at.date()
            visit.head_count, visit.expected_minutes = 1, 60
            visit.planned_start = visit.started_at = at
            visit.planned_finish = visit.finished_at = at + timedelta(hours=6)
            visit.save()
            yield visit, there[part::DAYS_OF_A_ROUND]


def _has_left(cow: Cow, day: date) -> bool:
    return cow.left_on is not None and cow.left_on <= day + timedelta(days=DAYS_OF_A_ROUND)


def _trims(house: House, visit: Visit, there: list[Cow]) -> Iterator[Trim]:
    for number, cow in enumerate(there):
        at = visit.started_at + timedelta(minutes=3 * number)
        yield Trim(
            business=house.business,
            visit=visit,
            cow=cow,
            kind=TrimKind.FUNCTIONAL.value,
            recorded_at=at,
            recorded_by=house.trimmer,
        )


def _store_feet(trims: list[Trim], chance: Random) -> None:
    feet = [
        TrimmedFoot(business_id=trim.business_id, trim=trim, foot=foot.value)
        for trim in trims
        for foot in (*HINDS, *(FORES if chance.random() < FORE_FEET else ()))
    ]
    TrimmedFoot.objects.bulk_create(feet, batch_size=BATCH)
    sore = [(foot, *chance.choice(LESIONS)) for foot in feet if chance.random() < WITH_LESION]
    Finding.objects.bulk_create(
        [
            Finding(business_id=foot.business_id, trimmed_foot=foot, lesion=code, claw=claw.value, zone=zone)
            for foot, code, claw, zone in sore
        ],
        batch_size=BATCH,
    )
    kinds = (ActionKind.LENGTH, ActionKind.BALANCE)
    actions = [
        ClawAction(business_id=foot.business_id, trimmed_foot=foot, kind=kind.value)
        for foot in feet
        for kind in kinds
    ]
    actions += [
        ClawAction(business_id=foot.business_id, trimmed_foot=foot, kind=ActionKind.RELIEF.value)
        for foot, *_ in sore
    ]
    ClawAction.objects.bulk_create(actions, batch_size=BATCH)
    _store_follow_up(sore, chance)


def _store_follow_up(sore: list[tuple[TrimmedFoot, str, Claw, int]], chance: Random) -> None:
    """A re-check of every fourth sore foot and a block on every tenth, all over by now."""
    rechecks, blocks = [], []
    for foot, *_ in sore:
        trim, day = foot.trim, foot.trim.recorded_at.date()
        until = day + timedelta(days=28)
        if chance.random() < 0.25:
            rechecks.append(
                Recheck(
                    business_id=foot.business_id,
                    farm=trim.visit.farm,
                    cow=trim.cow,
                    foot=foot.foot,
                    cause="lesion",
                    what="seen again",
                    due_from=day + timedelta(days=21),
                    due_until=until,
                    from_trim=trim,
                    closed_on=until + timedelta(days=chance.randrange(-5, 20)),
                    closed_because="looked at",
                )
            )
        if chance.random() < 0.1:
            off = until + timedelta(days=chance.randrange(-5, 10))
            blocks.append(
                Block(
                    business_id=foot.business_id,
                    cow=trim.cow,
                    foot=foot.foot,
                    claw=Claw.MEDIAL.value,
                    kind="wood",
                    put_on_by=trim,
                    put_on=day,
                    off_due=until,
                    off_on=off,
                )
            )
    Recheck.objects.bulk_create(rechecks, batch_size=BATCH)
    Block.objects.bulk_create(blocks, batch_size=BATCH)


def _store_scores(house: House, lives: list[Life], wanted: Wanted, chance: Random) -> None:
    scores = []
    for number in range(wanted.years * 2):
        day = wanted.first + timedelta(days=100 + 182 * number)
        at = datetime.combine(day, time(12), UTC)
        scoring = MobilityScoring(business=house.business, farm=house.farm, scored_on=day, whole_herd=True)
        scoring.scale, scoring.noted_at, scoring.noted_by = MobilityScale.UK.value, at, house.owner
        scoring.save()
        scores += [
            MobilityScore(
                business=house.business, scoring=scoring, cow=life.cow, score=chance.choice((0, 1, 1, 2))
            )
            for life in lives
            if life.came <= day and not _has_left(life.cow, day)
        ]
    MobilityScore.objects.bulk_create(scores, batch_size=BATCH)

"""Mobility scores of some farms of the demo: every cow looked at three times a year, on the UK score sheet."""

from collections.abc import Iterator
from datetime import date, time, timedelta
from random import Random

from farms.models import Cow, Farm
from trimops.kernel.clock import at_local
from trimops.portal.demo.build_people import Crew
from trimops.portal.demo.chances import happens, swing
from trimops.portal.demo.demo_files import FarmSketch, Rates
from trimops.portal.demo.invent_history import ZONE
from visits.domain.mobility import MobilityScale
from visits.models import MobilityScore, MobilityScoring

BATCH = 900
DAYS_BETWEEN = 121
SCORED_BY = "the herd manager"
MOST_LAME = 0.7


def build_scorings(
    crew: Crew,
    farms: list[Farm],
    sketches: list[FarmSketch],
    herds: list[list[Cow]],
    rates: Rates,
    span: tuple[date, date],
) -> None:
    """Of the farms that have the whole herd trimmed; the share of lame cows follows their lesions, later on too."""
    first, today = span
    rows: list[tuple[MobilityScoring, list[MobilityScore]]] = []
    for farm, sketch, herd in zip(farms, sketches, herds, strict=True):
        if not sketch.whole_herd:
            continue
        chance = Random(f"scores of {sketch.name}")
        lame = rates.scored_lame * swing(chance, rates.scored_lame_spread)
        for day in _days(first + timedelta(days=chance.randrange(60)), today):
            share = lame * (sketch.later if day >= first + (today - first) / 2 else 1)
            there = [cow for cow in herd if _is_there(cow, day)]
            scoring = _scoring(crew, farm, day)
            scores = [_score(min(share, MOST_LAME), chance) for _ in there]
            rows.append((scoring, [_scored(scoring, *pair) for pair in zip(there, scores, strict=True)]))
    MobilityScoring.objects.bulk_create([scoring for scoring, _ in rows])
    MobilityScore.objects.bulk_create([score for _, scores in rows for score in scores], batch_size=BATCH)


def _days(first: date, today: date) -> Iterator[date]:
    while first < today:
        yield first
        first += timedelta(days=DAYS_BETWEEN)


def _scoring(crew: Crew, farm: Farm, day: date) -> MobilityScoring:
    return MobilityScoring(
        business=crew.business,
        farm=farm,
        scored_on=day,
        scale=MobilityScale.UK.value,
        scored_by=SCORED_BY,
        whole_herd=True,
        noted_at=at_local(day, time(12), ZONE),
        noted_by=crew.people["office"],
    )


def _scored(scoring: MobilityScoring, cow: Cow, score: int) -> MobilityScore:
    return MobilityScore(business_id=scoring.business_id, scoring=scoring, cow=cow, score=score)


def _is_there(cow: Cow, day: date) -> bool:
    return cow.entered_on is not None and cow.entered_on <= day and not (cow.left_on and cow.left_on <= day)


def _score(lame: float, chance: Random) -> int:
    if happens(chance, lame):
        return chance.choices((2, 3), (0.85, 0.15))[0]
    return chance.choices((0, 1), (0.55, 0.45))[0]

"""What was learned of the length of visits, and a visit's expected length by it."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from visits.domain.visit_length import LengthFigures
from visits.domain.visit_lengths.finished_visit import Asked, Work
from visits.domain.visit_lengths.length_parts import (
    COLUMN,
    TRIMMER_PACE,
    Vans,
    amounts,
    columns_of,
    prior_of,
)
from visits.domain.visit_lengths.mixed_rows import GroupPart, doubt_of
from visits.domain.visit_lengths.small_algebra import Table, Vector
from visits.domain.visit_lengths.spread_shape import NORMAL_SHAPE, SpreadShape
from visits.domain.visit_lengths.variance_steps import Variances
from visits.domain.visit_lengths.work_shares import WorkShares, work_ahead

FARM_STAY, FARM_PACE = 10.0, 1.2
"""How farms differ before any was seen, standard deviations: minutes a visit, minutes a cow (no source)."""
USUAL_SCALE, USUAL_GROWTH = 0.75, 1.5
"""Noise of a visit before any was seen: sqrt(0.75 x minutes^1.5) is 14 min of 60 and 46 of 300 (no source)."""
FREEDOM = 5.0
TAIL = 1.15
"""A t-curve of 5 degrees holds four in five within 1.15 times the span of a normal curve of the same scale."""
LEAST_PACE = 1.0
"""Minutes; no cow takes less, whatever was learned, so that more cows never take less time."""

AT_CRUSH = ("functional_cow", "corrective_cow", "check_cow", "block")
AFTER = ("pack_up", "wash_down", "wash_down_dermatitis", "wash_down_restricted")


@dataclass(frozen=True)
class FarmLearned:
    """A farm's own part, (minutes a visit, minutes a cow), and from how many visits."""

    visits: int
    part: GroupPart


@dataclass(frozen=True)
class LearnedRule:
    """The figures of one business. Columns are those of `length_parts.py`, minutes throughout."""

    vans: Vans
    mean: Vector
    covariance: Table
    variances: Variances
    shares: WorkShares
    farms: Mapping[int, FarmLearned]
    visits: int
    shape: SpreadShape = NORMAL_SHAPE
    day_share: float = 0.2

    def figure(self, name: str) -> float:
        """Minutes of one of the PARTS, as learned."""
        return self.mean[COLUMN[name]]


@dataclass(frozen=True)
class LikelyLength:
    """Minutes and standard deviation; four in five such visits last from `low` to `high`. Parts in words, minutes.

    Of the minutes, `at_crush` go to the `cows` and `after` to what comes after the last of them.
    """

    minutes: float
    spread: float
    low: float
    high: float
    parts: tuple[tuple[str, float], ...]
    visits_here: int
    visits_in_all: int
    cows: float = 0.0
    at_crush: float = 0.0
    after: float = 0.0


def usual_rule(figures: LengthFigures) -> LearnedRule:
    """What is thought before any visit was seen: its mean is exactly the planning figures'."""
    vans = Vans(())
    prior = prior_of(figures, vans)
    size = range(vans.columns)
    covariance = [[1 / prior.precisions[a] if a == b else 0.0 for b in size] for a in size]
    variances = Variances((FARM_STAY**2, FARM_PACE**2), USUAL_SCALE, USUAL_GROWTH)
    return LearnedRule(vans, list(prior.means), covariance, variances, WorkShares(), {}, 0)


def likely_length(rule: LearnedRule, asked: Asked) -> LikelyLength:
    """The expected length of a visit that is asked for. ValueError on impossible counts."""
    ahead = work_ahead(rule.shares, asked)
    here = rule.farms.get(asked.farm) or FarmLearned(0, _stranger(rule))
    parts = _minutes(rule, asked, ahead.work, here)
    minutes = max(LEAST_PACE, sum(parts.values()))
    work_gap = rule.figure("corrective_cow") - rule.figure("functional_cow")
    work_gap += rule.shares.blocks * rule.figure("block")
    variance = _doubt(rule, asked, ahead.work, here) + ahead.corrective_variance * work_gap**2
    spread = math.sqrt(variance + TAIL**2 * rule.variances.noise(minutes))
    low, high = (minutes + spread * rule.shape.error_below(share) for share in (0.1, 0.9))
    words = tuple((_words(name, ahead.work, value), value) for name, value in parts.items() if value)
    return LikelyLength(
        minutes,
        spread,
        max(LEAST_PACE, low),
        max(LEAST_PACE, high),
        words,
        here.visits,
        rule.visits,
        ahead.work.cows,
        sum(parts.get(name, 0.0) for name in AT_CRUSH),
        sum(minutes for name, minutes in parts.items() if name in AFTER),
    )


def _minutes(rule: LearnedRule, asked: Asked, work: Work, here: FarmLearned) -> dict[str, float]:
    """Minutes by part; what a farm takes more or less per cow is in the cows' parts."""
    stay, pace = here.part.mean
    column = rule.vans.column(asked.van)
    pace += 0.0 if column is None else rule.mean[column]
    found = {}
    for name, amount in amounts(asked.setup, work).items():
        each = rule.figure(name)
        if name in ("functional_cow", "corrective_cow", "check_cow"):
            each = max(LEAST_PACE, each + pace)
        found[name] = max(0.0, each) * amount
    found["farm"] = stay
    return found


def _doubt(rule: LearnedRule, asked: Asked, work: Work, here: FarmLearned) -> float:
    """Variance of the mean: figures not known exactly, a farm seen little, a van never seen."""
    columns = columns_of(asked.setup, work, rule.vans, asked.van)
    known = doubt_of(columns, (1.0, work.cows), rule.covariance, here.part)
    new_van = rule.vans.column(asked.van) is None
    return known + (TRIMMER_PACE * work.cows) ** 2 * new_van


def _stranger(rule: LearnedRule) -> GroupPart:
    """A farm never seen: like the others on the whole, as different as farms are."""
    stay, pace = rule.variances.groups
    nothing = [[0.0] * len(rule.mean) for _ in range(2)]
    return GroupPart([0.0, 0.0], [[stay, 0.0], [0.0, pace]], nothing)


def _words(name: str, work: Work, minutes: float) -> str:
    counts = {
        "functional_cow": work.functional,
        "corrective_cow": work.corrective,
        "check_cow": work.check,
        "block": work.blocks,
    }
    if name == "farm":
        return "slower than elsewhere" if minutes > 0 else "quicker than elsewhere"
    return WORDS[name].format(_count(counts.get(name, 0.0)))


def _count(number: float) -> str:
    """What is only expected is said in whole numbers, as about so many."""
    return f"{number:.0f}" if number == round(number) else f"about {max(1, round(number))}"


WORDS = {
    "set_up_brought": "setting up",
    "set_up_on_site": "setting up",
    "pack_up": "packing up",
    "functional_cow": "{} cows to trim",
    "corrective_cow": "{} lame or re-checked",
    "check_cow": "{} only looked at",
    "block": "{} blocks",
    "wash_down": "washing down",
    "wash_down_dermatitis": "washing down",
    "wash_down_restricted": "washing down",
    "no_hard_standing": "no hard standing",
    "no_water": "no water at the place",
    "no_power": "no power",
    "no_light": "no light",
}


def with_shape(rule: LearnedRule, shape: SpreadShape, day_share: float) -> LearnedRule:
    """The same rule with the shape of its errors and what the visits of one day have in common."""
    return replace(rule, shape=shape, day_share=day_share)

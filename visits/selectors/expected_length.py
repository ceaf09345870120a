"""How long a visit to a farm will take, and where that figure comes from."""

import math
from dataclasses import dataclass

from farms.models import Farm
from visits.domain.visit_lengths.finished_visit import Asked
from visits.domain.visit_lengths.learned_rule import LearnedRule, LikelyLength, likely_length
from visits.models import Visit
from visits.selectors.farm_setup import setup_of
from visits.selectors.learned_rule import rule_in_use

GRAIN = 5
"""Minutes; a span is not said more exactly than that."""


@dataclass(frozen=True)
class ExpectedVisit:
    """Whole minutes and their parts in words; four in five such visits last from `low` to `high` minutes.

    `visits_here` and `visits_in_all` are the finished visits the figure comes from; none in all: it comes from the
    planning figures. `exact` is for reckoning on.
    """

    minutes: int
    parts: tuple[tuple[str, float], ...]
    low: int
    high: int
    visits_here: int
    visits_in_all: int
    exact: LikelyLength

    @property
    def told_parts(self) -> list[tuple[str, float]]:
        """Those of a minute or more: what is left out rounds to nothing."""
        return [(words, minutes) for words, minutes in self.parts if abs(minutes) >= 1]

    @property
    def is_learned(self) -> bool:
        return self.visits_in_all > 0


def expected_at(
    farm: Farm, *, head_count: int, corrective_count: int, van_id: int | None = None
) -> ExpectedVisit:
    """For so many cows at that farm, so many of them lame or to be re-checked. ValueError on impossible counts."""
    asked = Asked(farm.pk, van_id, setup_of(farm), head_count, corrective_count)
    return expected_by(rule_in_use(farm.scope).rule, asked)


def expected_by(rule: LearnedRule, asked: Asked) -> ExpectedVisit:
    """The same by a rule that is at hand: for many visits at once."""
    likely = likely_length(rule, asked)
    # A sum of whole minutes must not become one more by the last digit of a float.
    return ExpectedVisit(
        math.ceil(likely.minutes - 1e-6),
        likely.parts,
        GRAIN * math.floor(likely.low / GRAIN + 0.5),
        GRAIN * math.floor(likely.high / GRAIN + 0.5),
        likely.visits_here,
        likely.visits_in_all,
        likely,
    )


def asked_of(visit: Visit) -> Asked:
    """What the visit was asked for; its farm must be at hand."""
    return Asked(
        visit.farm_id,
        visit.van_id,
        setup_of(visit.farm),
        visit.head_count,
        min(visit.corrective_count, visit.head_count),
    )

"""What was learned of the length of visits, for the page of a business's own figures."""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from farms.models import Farm
from trimops.accounts.models import Business
from trimops.kernel.scope import Scope
from visits.domain.visit_lengths.learn_lengths import FEWEST_VISITS
from visits.domain.visit_lengths.learned_rule import LearnedRule
from visits.domain.visit_lengths.length_parts import COLUMN, Vans, prior_of
from visits.models import LearnedLengths, Van
from visits.selectors.business_figures import figures_of
from visits.selectors.learned_rule import rule_in_use
from visits.selectors.length_history import finished_visits

SHOWN = {
    "functional_cow": "A cow, usual trim",
    "corrective_cow": "A lame or re-checked cow",
    "check_cow": "A cow only looked at",
    "block": "A block, on top of the cow",
    "set_up_brought": "Setting up a crush brought along",
    "set_up_on_site": "Setting up a crush that stands there",
    "pack_up": "Packing up",
}
COWS = 20
"""Farms and vans are compared over a visit of so many cows."""
FARMS_SHOWN = 5


@dataclass(frozen=True)
class LearnedFigure:
    """Minutes as learned, give or take (one standard deviation), and the figure that learning began from."""

    words: str
    minutes: float
    give_or_take: float
    began_from: float


@dataclass(frozen=True)
class Difference:
    """How many minutes more (or less) than the others a farm or a van takes over `COWS` cows; visits it was seen on."""

    who: str
    minutes: float
    visits: int

    @property
    def less(self) -> float:
        return -self.minutes


@dataclass(frozen=True)
class LengthsStory:
    """`row` is None until `fewest` visits are finished; `finished` says how many are."""

    row: LearnedLengths | None
    finished: int
    fewest: int = FEWEST_VISITS
    figures: Sequence[LearnedFigure] = ()
    slowest: Sequence[Difference] = ()
    quickest: Sequence[Difference] = ()
    vans: Sequence[Difference] = ()

    @property
    def kept_percent(self) -> int | None:
        return round(self.row.held_out_kept * 100) if self.row else None


def lengths_story(business: Business) -> LengthsStory:
    """Five queries."""
    scope = Scope(business.pk)
    in_use = rule_in_use(scope)
    finished = finished_visits(scope).count()
    if in_use.row is None:
        return LengthsStory(None, finished)
    farms = _farms(scope, in_use.rule)
    return LengthsStory(
        in_use.row,
        finished,
        FEWEST_VISITS,
        _figures(scope, in_use.rule),
        [farm for farm in reversed(farms[-FARMS_SHOWN:]) if farm.minutes > 0],
        [farm for farm in farms[:FARMS_SHOWN] if farm.minutes < 0],
        _vans(scope, in_use.rule),
    )


def _figures(scope: Scope, rule: LearnedRule) -> list[LearnedFigure]:
    prior = prior_of(figures_of(scope).length, Vans(()))
    return [
        LearnedFigure(
            words,
            rule.figure(name),
            math.sqrt(rule.covariance[COLUMN[name]][COLUMN[name]]),
            prior.means[COLUMN[name]],
        )
        for name, words in SHOWN.items()
    ]


def _farms(scope: Scope, rule: LearnedRule) -> list[Difference]:
    """Quickest first."""
    names = _names(Farm.objects.within(scope).active().values_list("pk", "name"))
    found = [
        Difference(names[farm], known.part.mean[0] + COWS * known.part.mean[1], known.visits)
        for farm, known in rule.farms.items()
        if farm in names
    ]
    return sorted(found, key=lambda difference: difference.minutes)


def _vans(scope: Scope, rule: LearnedRule) -> list[Difference]:
    names = _names(Van.objects.within(scope).filter(is_active=True).values_list("pk", "name"))
    columns = {van: rule.vans.column(van) for van in rule.vans.keys if van in names}
    return [Difference(names[van], COWS * rule.mean[at], 0) for van, at in columns.items() if at is not None]


def _names(rows: Iterable[tuple[int, str]]) -> Mapping[int, str]:
    return dict(rows)

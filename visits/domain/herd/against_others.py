"""This herd against a published figure, and against the business's other herds: always the interval of a difference.

Method, published: the share of cows here less the published one. Where the published count is printed, Newcombe's
interval of two shares; where only its 95 % interval is printed, the same sum of squared distances with the
printed bounds (Zou and Donner 2008, Stat Med 27:1693); where nothing but a percentage is printed it is taken as
it stands, and the interval is that of this herd alone. Method, own business: `shrunken_rates`, this herd's share
less the mean share of the other herds, all pulled to their common mean. Unit: cows per 100 cows seen, a
difference in points. Sources from memory, but for those that a published figure names.

A difference is told only when the interval leaves out 0. There is no rank and no name, and no herd's own figure
but this one's; the range of a usual herd is where four herds in five of this business are thought to lie.

When the figure must not be shown: picked cows against a whole herd, in either direction; one way of counting
against another; with too few herds. Then the answer is `NotCompared`, which says why. A published mean is of many
herds: to differ from it is usual, so show `herds` (lowest to highest herd) with it where it is printed.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from visits.domain.herd.intervals import LEVEL, Interval, newcombe, wilson
from visits.domain.herd.lesion_families import What, what_label
from visits.domain.herd.lesion_rates import LesionRate
from visits.domain.herd.published_rates import Per, PublishedRate
from visits.domain.herd.shrunken_rates import (
    HerdCount,
    ShrunkenRate,
    herds_together,
    shrunken_rate,
)

LEAST_OTHERS = 4
"""With fewer, a farm that knows its own figure could come near a neighbour's (as is usual with published counts; from
memory; the number is our choice)."""
USUAL_LEVEL = 0.8
PRINTED_LEVEL = 0.95


class Verdict(StrEnum):
    """What the interval of the difference allows to be said."""

    HIGHER = "higher"
    LOWER = "lower"
    NOT_TOLD_APART = "not_told_apart"


@dataclass(frozen=True)
class HerdShare:
    """`cows` of `seen` in this herd had it; `what` and `per` as in `published_rates`."""

    what: What
    per: Per
    cows: int
    seen: int
    is_whole_herd: bool

    @classmethod
    def of(cls, rate: LesionRate) -> "HerdShare":
        """The share of one round."""
        return cls(rate.code, Per.COWS_TRIMMED, rate.cows, rate.seen, rate.is_herd_rate)

    @property
    def words(self) -> str:
        return "lame cows" if self.per is Per.COWS_SCORED else what_label(self.what)


@dataclass(frozen=True)
class NotCompared:
    """Why there is no comparison, as a sentence."""

    why: str


@dataclass(frozen=True)
class AgainstPublished:
    """All per 100 cows seen. `is_taken_as_exact`: the published figure came without a count and without an interval."""

    here: HerdShare
    published: PublishedRate
    difference: Interval
    verdict: Verdict
    is_taken_as_exact: bool

    @property
    def herds(self) -> Interval | None:
        """From the lowest to the highest of the published herds, where that is printed."""
        low, high = self.published.low, self.published.high
        if self.published.spread != "herds" or low is None or high is None:
            return None
        return Interval(low, high, 1.0)


@dataclass(frozen=True)
class AgainstBusiness:
    """Shares 0 to 1. `mean` is that of the other herds, `difference` this herd less it, `usual` where four in five
    herds of the business lie. `herds` counts all of them, this one too."""

    here: ShrunkenRate
    mean: float
    difference: Interval
    usual: Interval
    verdict: Verdict
    herds: int


def against_published(here: HerdShare, published: PublishedRate) -> AgainstPublished | NotCompared:
    """This herd less the published figure, in points."""
    if refused := _why_not(here, published):
        return NotCompared(refused)
    bounds = _printed_bounds(published)
    difference = _difference(here, published, bounds)
    exact = bounds is None and not published.total
    return AgainstPublished(here, published, difference, verdict_of(difference), exact)


def against_business(
    here: HerdShare, others: Sequence[HerdCount], level: float = LEVEL
) -> AgainstBusiness | NotCompared:
    """This herd against whole-herd counts of the business's other herds (only such may be given)."""
    if refused := _why_no_herd_figure(here):
        return NotCompared(refused)
    together = herds_together([HerdCount(here.cows, here.seen), *others])
    if together is None or sum(count.seen > 0 for count in others) < LEAST_OTHERS:
        return NotCompared(f"Compared only when {LEAST_OTHERS} other herds or more were seen as a whole.")
    beside = together.beside_others(0, level)
    return AgainstBusiness(
        here=shrunken_rate(together, 0, level),
        mean=beside.mean,
        difference=beside.difference,
        usual=together.usual_herd().interval(USUAL_LEVEL),
        verdict=verdict_of(beside.difference),
        herds=sum(count.seen > 0 for count in together.counts),
    )


def verdict_of(difference: Interval) -> Verdict:
    if difference.low > 0:
        return Verdict.HIGHER
    return Verdict.LOWER if difference.high < 0 else Verdict.NOT_TOLD_APART


def _why_not(here: HerdShare, published: PublishedRate) -> str:
    if refused := _why_no_herd_figure(here):
        return refused
    if published.per is not here.per or published.code != here.what:
        return f"The published figure counts something else than {here.words} of the cows seen here."
    if published.whole_herd is False:
        return "The published figure is of cows picked out, this one of the whole herd."
    return ""


def _why_no_herd_figure(here: HerdShare) -> str:
    if not here.seen:
        return "No cows were seen."
    if not here.is_whole_herd:
        return "Only picked cows were seen: that says nothing of the whole herd, so it is not compared."
    return ""


def _printed_bounds(published: PublishedRate) -> Interval | None:
    if published.spread != "95 % interval" or published.low is None or published.high is None:
        return None
    return Interval(published.low, published.high, PRINTED_LEVEL)


def _difference(here: HerdShare, published: PublishedRate, bounds: Interval | None) -> Interval:
    if published.count is not None and published.total:
        return newcombe(here.cows, here.seen, published.count, published.total, PRINTED_LEVEL).times(100)
    own = wilson(here.cows, here.seen, PRINTED_LEVEL).times(100)
    share, there = 100 * here.cows / here.seen, published.per_100
    other = bounds or Interval(there, there, PRINTED_LEVEL)
    return Interval(
        share - there - math.hypot(share - own.low, other.high - there),
        share - there + math.hypot(own.high - share, there - other.low),
        PRINTED_LEVEL,
    )

"""Picture 6: this herd's newest whole-herd round beside figures in print and the business's other herds.

Method: for each thing compared, the interval of this herd's share less the mean share of the other herds, all of them
pulled to their common mean (`against_business`), and Newcombe's interval of the difference to the other herds' cows
taken together; only when both leave out 0, on the same side, a difference is told. (Where hardly a case was seen in any
herd the pulled shares are moved by their prior alone; cows taken together cannot be.) Four things are compared, so each
at 98.75 % (Bonferroni). Differences to figures in print are given as intervals in a table and not judged: they are of
other countries, breeds and years. Unit: cows per 100 seen.

When the figure must not be shown: against picked cows; against other herds when fewer than four others had a whole-herd
round, since a figure could then be traced to a neighbour. No names, no rank.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from trimops.paper.figures import counted
from visits.domain.herd.against_others import (
    LEAST_OTHERS,
    AgainstBusiness,
    AgainstPublished,
    HerdShare,
    NotCompared,
    Verdict,
    against_business,
    against_published,
    verdict_of,
)
from visits.domain.herd.finding import Finding, FindingKind, StoryPeriod, figure
from visits.domain.herd.intervals import LEVEL, Share, newcombe, share_of
from visits.domain.herd.lesion_families import What
from visits.domain.herd.lesion_rates import LesionRate, rate_of
from visits.domain.herd.published_rates import Per, published_for
from visits.domain.herd.rounds import TrimRound
from visits.domain.herd.shrunken_rates import HerdCount
from visits.domain.herd.story_trend import month_of
from visits.domain.lesions import LesionCode

TITLE = "Beside other herds"
COMPARED: tuple[What, ...] = (None, LesionCode.DD, LesionCode.U, LesionCode.WL)
LEVEL_OF_EACH = 1 - (1 - LEVEL) / len(COMPARED)
MOST_PUBLISHED = 1


@dataclass(frozen=True)
class OtherHerds:
    """The newest whole-herd rounds of the business's other herds: for each thing, cows with it of cows seen."""

    counts: Mapping[What, Sequence[HerdCount]] = field(default_factory=dict)

    @property
    def herds(self) -> int:
        return len(self.counts.get(None, ()))

    @property
    def are_enough(self) -> bool:
        """Fewer others are never shown, not even as a mean."""
        return self.herds >= LEAST_OTHERS


@dataclass(frozen=True)
class ComparedRate:
    """One thing of the newest whole-herd round, and what it was set against. `together`: the other herds' cows."""

    rate: LesionRate
    business: AgainstBusiness | None
    together: Share
    published: tuple[AgainstPublished, ...]


@dataclass(frozen=True)
class OthersStory:
    """`others` counts the business's other herds that were set against; 0 when they were too few."""

    compared: tuple[ComparedRate, ...]
    others: int
    finding: Finding


def others_story(
    rounds: Sequence[TrimRound], others: OtherHerds, country: str, period: StoryPeriod
) -> OthersStory:
    """The newest whole-herd round speaks, if it is not older than the year before the period."""
    whole = [each for each in rounds if each.is_whole_herd and each.last >= period.before.start]
    if not whole:
        sentence = (
            "Not compared: the herd was not seen as a whole of late, and picked cows do not stand for it."
        )
        return OthersStory((), 0, Finding(TITLE, sentence, FindingKind.PICKED))
    compared = tuple(_compared(whole[-1], what, others, country) for what in COMPARED)
    told = others.herds if others.are_enough else 0
    return OthersStory(compared, told, _finding(compared, whole[-1], told))


def _compared(newest: TrimRound, what: What, others: OtherHerds, country: str) -> ComparedRate:
    rate = rate_of(newest, what)
    here = HerdShare.of(rate)
    business = None
    if others.are_enough:
        found = against_business(here, others.counts[what], LEVEL_OF_EACH)
        business = None if isinstance(found, NotCompared) else found
    counts = others.counts.get(what, ()) if others.are_enough else ()
    together = share_of(sum(each.cows for each in counts), sum(each.seen for each in counts))
    printed = published_for(what, Per.COWS_TRIMMED, country)[:MOST_PUBLISHED]
    against = (against_published(here, each) for each in printed)
    told = tuple(each for each in against if isinstance(each, AgainstPublished))
    return ComparedRate(rate, business, together, told)


def _finding(compared: tuple[ComparedRate, ...], newest: TrimRound, others: int) -> Finding:
    seen = f"{counted(newest.cows, 'cow')} seen in {month_of(newest.last)}"
    basis = f"This herd: {seen}. Figures in print are of other countries and years."
    if not others:
        sentence = "Too few of the other herds were seen as a whole to set this one beside them."
        return Finding(TITLE, sentence, FindingKind.TOO_FEW, basis)
    basis += " The range is where four in five herds lie."
    apart = [each for each in compared if _verdict(each) is not Verdict.NOT_TOLD_APART]
    herds = counted(others, "other herd")
    if not apart:
        sentence = f"Not told apart from the {herds} seen as a whole."
        return Finding(TITLE, sentence, FindingKind.STEADY, basis)
    ways = (Verdict.HIGHER, Verdict.LOWER)
    told = [words for way in ways if (words := _told([e for e in apart if _verdict(e) is way], way))]
    sentence = f"{'; '.join(told)} in the {herds} seen as a whole."
    kind = FindingKind.WORSE if _verdict(apart[0]) is Verdict.HIGHER else FindingKind.BETTER
    return Finding(TITLE, f"{sentence[0].upper()}{sentence[1:]}", kind, basis, _short(apart[0]))


def _verdict(each: ComparedRate) -> Verdict:
    """What both intervals allow to be said."""
    rate, together = each.rate, each.together
    if each.business is None or not together.total:
        return Verdict.NOT_TOLD_APART
    gap = newcombe(rate.cows, rate.seen, together.count, together.total, LEVEL_OF_EACH)
    return each.business.verdict if verdict_of(gap) is each.business.verdict else Verdict.NOT_TOLD_APART


def _told(apart: list[ComparedRate], way: Verdict) -> str:
    """ "fewer cows with ulcer (3 against 13 per 100) than" """
    if not apart:
        return ""
    parts = [
        f"{each.rate.what} ({figure(each.rate.per_100 or 0)} against {figure(each.together.per_100 or 0)} per 100)"
        for each in apart
    ]
    listed = f"{', '.join(parts[:-1])} and {parts[-1]}" if len(parts) > 1 else parts[0]
    return f"{'more' if way is Verdict.HIGHER else 'fewer'} cows with {listed} than"


def _short(each: ComparedRate) -> str:
    more = "more" if _verdict(each) is Verdict.HIGHER else "fewer"
    return f"{more} cows with {each.rate.what} than in the other herds"

"""Picture 4: which cows have lesions, by lactation, days in milk and season.

Method: cows with any lesion of cows seen in each group (`lesions_by`), of the whole-herd rounds of the period, each cow
by her last look alone (for the season, her last look of each): a group that cows stay in for long would else be looked
at more often and seem worse. Lactations and days in milk are told apart by Newcombe's interval of the difference, for
every pair, each at a level that keeps 5 % over all pairs (Bonferroni); of those told apart the widest is said. Seasons
are shown and never said: within one year they cannot be told from a change of the herd. Unit: cows per 100 cows seen.

When the figure must not be shown as the herd's: without a whole-herd round in the period. It is no cause.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import combinations

from trimops.paper.figures import counted
from visits.domain.herd.facts import CowSeen, HerdFacts
from visits.domain.herd.finding import Finding, FindingKind, StoryPeriod
from visits.domain.herd.intervals import LEVEL, Share, newcombe, share_of
from visits.domain.herd.lesion_families import lesions_on
from visits.domain.herd.lesions_by import UNKNOWN, GroupRate, by_days_in_milk, by_parity, by_season, season_of
from visits.domain.herd.rounds import TrimRound

TITLE = "Which cows have lesions"
LACTATION = "Lactation"
LEAST_IN_GROUP = 5


@dataclass(frozen=True)
class Parting:
    """One way to part the cows. `is_compared`: its groups may be told apart."""

    label: str
    groups: tuple[GroupRate, ...]
    is_compared: bool = True


@dataclass(frozen=True)
class GroupsStory:
    """`everyone` is the share of all cows seen."""

    partings: tuple[Parting, ...]
    everyone: Share
    finding: Finding


def groups_story(facts: HerdFacts, rounds: Iterable[TrimRound], period: StoryPeriod) -> GroupsStory:
    """Of the whole-herd rounds within the period."""
    whole = [r for r in rounds if r.is_whole_herd and period.start <= r.first < period.end]
    looks = sorted((look for each in whole for look in each.seen), key=lambda look: look.day)
    last = tuple({look.cow: look for look in looks}.values())
    last_of_season = {(look.cow, season_of(look.day)): look for look in looks}
    partings = (
        Parting(LACTATION, by_parity(facts, last)),
        Parting("Days in milk", by_days_in_milk(facts, last)),
        Parting("Season", by_season(last_of_season.values()), is_compared=False),
    )
    everyone = share_of(sum(bool(lesions_on(look)) for look in last), len(last))
    return GroupsStory(partings, everyone, _finding(last, len(whole), partings, everyone, period))


def _finding(
    looks: tuple[CowSeen, ...],
    rounds: int,
    partings: tuple[Parting, ...],
    everyone: Share,
    period: StoryPeriod,
) -> Finding:
    if not looks:
        sentence = f"Nothing can be told of the herd: it was not seen as a whole {period.words}."
        return Finding(TITLE, sentence, FindingKind.PICKED)
    basis = (
        f"{counted(rounds, 'whole-herd round')} {period.words}, {counted(everyone.total, 'cow')}; "
        "each by her last look. Not a cause."
    )
    apart = _told_apart(partings)
    if apart is None:
        seen = f"{everyone.count} of {counted(everyone.total, 'cow')} had a lesion"
        sentence = f"Too few cows to tell groups apart: {seen}."
        return Finding(TITLE, sentence, FindingKind.TOO_FEW, basis)
    parting, more, fewer = apart
    sentence = (
        f"Lesions more often {_group_words(parting, more)} ({more.cows} of {more.seen} cows) than "
        f"{_group_words(parting, fewer)} ({fewer.cows} of {fewer.seen})."
    )
    return Finding(TITLE, sentence, FindingKind.PLAIN, basis, f"more often {_group_words(parting, more)}")


def _told_apart(partings: tuple[Parting, ...]) -> tuple[Parting, GroupRate, GroupRate] | None:
    """The pair with the widest difference among those told apart, the group with more first."""
    pairs = [(parting, *pair) for parting in partings for pair in combinations(_usable(parting), 2)]
    level = 1 - (1 - LEVEL) / max(1, len(pairs))
    found = [pair for pair in (_in_order(*pair) for pair in pairs) if _is_apart(pair[1], pair[2], level)]
    return max(found, key=lambda pair: (pair[1].per_100 or 0) - (pair[2].per_100 or 0), default=None)


def _usable(parting: Parting) -> list[GroupRate]:
    if not parting.is_compared:
        return []
    return [group for group in parting.groups if group.seen >= LEAST_IN_GROUP and group.group != UNKNOWN]


def _in_order(parting: Parting, one: GroupRate, other: GroupRate) -> tuple[Parting, GroupRate, GroupRate]:
    if (one.per_100 or 0) >= (other.per_100 or 0):
        return parting, one, other
    return parting, other, one


def _is_apart(more: GroupRate, fewer: GroupRate, level: float) -> bool:
    return newcombe(more.cows, more.seen, fewer.cows, fewer.seen, level).low > 0


def _group_words(parting: Parting, group: GroupRate) -> str:
    """ "in lactation 4 and more", "at 61 to 150 days in milk" """
    if parting.label == LACTATION:
        return f"in lactation {group.group}"
    return f"at {group.group} days in milk"

"""Six findings on a herd's feet, and which of them is the headline.

Method: each picture's own module (`story_*`). The headline is the first finding that tells something, in the order:
change of the herd's own rate, new cases, other herds, which cows, where. A headline is never made of a sentence that
the intervals do not support: without one it says that nothing changed, or that there are too few cows to tell.
"""

from collections import Counter
from dataclasses import dataclass
from datetime import date
from functools import cached_property

from visits.domain.herd.case_history import Case, CaseKind, cases_of, new_cases_between
from visits.domain.herd.cow_year_rates import counted_cases
from visits.domain.herd.facts import HerdFacts
from visits.domain.herd.finding import Finding, FindingKind, StoryPeriod
from visits.domain.herd.rounds import TrimRound, rounds_of
from visits.domain.herd.story_groups import GroupsStory, groups_story
from visits.domain.herd.story_kinds import KindsStory, kinds_story
from visits.domain.herd.story_others import OtherHerds, OthersStory, others_story
from visits.domain.herd.story_places import PlacesStory, places_story
from visits.domain.herd.story_time import TimeStory, time_story
from visits.domain.herd.story_trend import TrendStory, month_of, trend_story


@dataclass(frozen=True)
class HerdTold:
    """All that the page and the yearly paper tell of one herd in one period."""

    period: StoryPeriod
    rounds: tuple[TrimRound, ...]
    cases: tuple[Case, ...]
    seen_lame: frozenset[tuple[int, date]]
    trend: TrendStory
    kinds: KindsStory
    places: PlacesStory
    groups: GroupsStory
    time: TimeStory
    others: OthersStory

    @property
    def findings(self) -> tuple[Finding, ...]:
        stories = (self.trend, self.kinds, self.places, self.groups, self.time, self.others)
        return tuple(story.finding for story in stories)

    @property
    def headline(self) -> str:
        """Without the farm's name: "fewer cows with a lesion since May 2026"."""
        stories = (self.trend, self.kinds, self.others, self.groups, self.places)
        told = [story.finding for story in stories if story.finding.short]
        changed = [finding for finding in told if finding.kind is not FindingKind.PLAIN]
        if changed or told:
            return (changed or told)[0].short
        if self.trend.finding.kind is FindingKind.STEADY:
            return "no change in its feet that chance could not make"
        if self.trend.finding.kind is FindingKind.PICKED:
            return "part of the herd was seen, too little to speak for it"
        return "too few cows to tell yet"

    @cached_property
    def cases_begun(self) -> tuple[Case, ...]:
        """Cases that can be told to have begun in the period, or in as much of it as allows it."""
        since = self.kinds.since or self.period.end
        return new_cases_between(self.cases, max(self.period.start, since), self.period.end)

    @property
    def when_begun(self) -> str:
        """ "in 2026", "since June 2026" """
        since = self.kinds.since
        return (
            self.period.words if since is None or since <= self.period.start else f"since {month_of(since)}"
        )

    @cached_property
    def cases_when_lame(self) -> tuple[Case, ...]:
        """Those of them whose cow was scored lame when the case was first seen."""
        return tuple(case for case in self.cases_begun if (case.cow, case.first) in self.seen_lame)

    @property
    def kinds_of_cases(self) -> Counter[CaseKind]:
        return Counter(case.kind for case in self.cases_begun)


def herd_told(facts: HerdFacts, period: StoryPeriod, others: OtherHerds) -> HerdTold:
    """Everything, once. `facts` must not reach past the period's end."""
    rounds = rounds_of(facts)
    cases = counted_cases(facts, cases_of(facts))
    return HerdTold(
        period=period,
        rounds=rounds,
        cases=cases,
        seen_lame=frozenset((look.cow, look.day) for look in facts.seen if look.is_lame),
        trend=trend_story(facts, rounds, period),
        kinds=kinds_story(facts, cases, rounds, period),
        places=places_story(facts.seen, period),
        groups=groups_story(facts, rounds, period),
        time=time_story(facts, rounds, period),
        others=others_story(rounds, others, facts.country, period),
    )

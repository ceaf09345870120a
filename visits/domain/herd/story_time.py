"""Picture 5: how long a treated foot goes until it is treated again.

Method: Kaplan-Meier of all spells up to the end of the period (`time_to_next`), shown for a year. The share still free
of treatment after half a year is said only when its 95 % interval is at most 30 points wide. The curve is drawn as
far as `LEAST_FOLLOWED` feet are still followed: beyond, a step is the luck of a handful. Unit: treated feet, per 100.

When the figure must not be shown: past that day. The half-way day goes with the sentence: neither is told without the
other. On a farm that was not seen as a whole
in the year, a foot that nobody looked at counts as free: then the sentence says "fetched and treated again".
"""

from collections.abc import Iterable
from dataclasses import dataclass

from trimops.paper.figures import counted
from visits.domain.herd.facts import HerdFacts
from visits.domain.herd.finding import Finding, FindingKind, StoryPeriod, between, figure
from visits.domain.herd.intervals import Interval
from visits.domain.herd.rounds import TrimRound
from visits.domain.herd.time_to_next import SurvivalCurve, time_to_next

TITLE = "How long a treated foot stays free"
ASKED_DAY = 180
LAST_DAY = 365
WIDEST = 0.3
LEAST_FOLLOWED = 5


@dataclass(frozen=True)
class TimeStory:
    """The curve of all treated feet."""

    curve: SurvivalCurve
    finding: Finding

    @property
    def drawn_until(self) -> int:
        """The last day up to which enough feet are still followed; 0 when they never were enough."""
        durations = self.curve.durations
        return int(min(LAST_DAY, durations[-LEAST_FOLLOWED])) if len(durations) >= LEAST_FOLLOWED else 0

    @property
    def half_by(self) -> int | None:
        """The day by which half were treated again, when it is drawn and the finding tells something."""
        half = self.curve.median
        if half is None or not self.finding.kind.tells or half.day > self.drawn_until:
            return None
        return int(half.day)


def time_story(facts: HerdFacts, rounds: Iterable[TrimRound], period: StoryPeriod) -> TimeStory:
    """Of every foot treated before the period's end, whenever that was."""
    curve = time_to_next(facts, None, period.end)
    is_whole = any(each.is_whole_herd and each.last >= period.start for each in rounds)
    return TimeStory(curve, _finding(curve, "treated again" if is_whole else "fetched and treated again"))


def _finding(curve: SurvivalCurve, again: str) -> Finding:
    feet = len(curve.durations)
    basis = (
        f"{counted(feet, 'treated foot', 'treated feet')}, {curve.events} {again}; "
        "a re-check with no more than a look, or a block taken off, does not count as one. Feet of cows that left or "
        "were not seen since count up to then, which is too kind where cows are culled for their feet."
    )
    step = curve.at(ASKED_DAY)
    if step is None or curve.at_risk(ASKED_DAY) < LEAST_FOLLOWED:
        sentence = f"Too few to tell: fewer than {LEAST_FOLLOWED} treated feet have been followed for {ASKED_DAY} days."
        return Finding(TITLE, sentence, FindingKind.TOO_FEW, basis if feet else "")
    if step.high - step.low > WIDEST:
        sentence = (
            f"Too few to tell: {curve.events} of {counted(feet, 'treated foot', 'treated feet')} {again}."
        )
        return Finding(TITLE, sentence, FindingKind.TOO_FEW, basis)
    sure = between(Interval(100 * step.low, 100 * step.high))
    sentence = (
        f"Of 100 treated feet, {figure(100 * step.survival)} ({sure}) were not {again} within "
        f"{ASKED_DAY} days."
    )
    return Finding(TITLE, sentence, FindingKind.PLAIN, basis)

"""Picture 1: cows with a lesion, round by round, and whether that really changed.

Method: the rate of any lesion of every routine round (`lesion_rates`); the chart of change (`change_flag`) over the
whole-herd rounds alone. A change is only told when the chart flags one; its false-alarm rate goes with it. Rounds of
picked cows are shown apart and never enter the chart. Unit: cows per 100 cows seen in the round.

When the figure must not be shown as the herd's: with no whole-herd round; then the sentence says so. Rounds fall in
different seasons, which the chart does not know: the basis says so.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from trimops.paper.figures import counted
from visits.domain.herd.change_flag import ChangeChart, Counted, Counting, Direction, Flag, change_chart
from visits.domain.herd.facts import HerdFacts
from visits.domain.herd.finding import Finding, FindingKind, StoryPeriod, between, figure, of_seen
from visits.domain.herd.lesion_rates import LesionRate, rate_of
from visits.domain.herd.rounds import TrimRound
from visits.domain.visit_states import VisitReason

TITLE = "Cows with a lesion, round by round"
YEARS_SHOWN = 5
MOST_POINTS = 40


@dataclass(frozen=True)
class RoundPoint:
    """One routine round and its rate of cows with any lesion."""

    day: date
    rate: LesionRate


@dataclass(frozen=True)
class TrendStory:
    """`points` are the routine rounds to show, `chart` the one over all whole-herd rounds."""

    points: tuple[RoundPoint, ...]
    chart: ChangeChart
    finding: Finding

    @property
    def standing(self) -> Flag | None:
        return self.chart.standing


def trend_story(facts: HerdFacts, rounds: Iterable[TrimRound], period: StoryPeriod) -> TrendStory:
    """The rounds up to the end of the period."""
    routine = [r for r in rounds if r.seen[0].reason is VisitReason.ROUTINE and r.first < period.end]
    points = [RoundPoint(r.first, rate_of(r, None)) for r in routine]
    whole = [point for point in points if point.rate.is_herd_rate]
    chart = change_chart([_counted(point) for point in whole], Counting.OF_COWS_SEEN)
    since = period.end - timedelta(days=round(YEARS_SHOWN * 365.25))
    shown = tuple(point for point in points if point.day >= since)[-MOST_POINTS:]
    return TrendStory(shown, chart, _finding(points, whole, chart, period))


def _counted(point: RoundPoint) -> Counted:
    return Counted(point.day, point.day + timedelta(days=1), point.rate.cows, point.rate.seen)


def _finding(
    points: list[RoundPoint], whole: list[RoundPoint], chart: ChangeChart, period: StoryPeriod
) -> Finding:
    if not points:
        return Finding(TITLE, "No routine round yet: nothing to tell.", FindingKind.TOO_FEW)
    if not whole:
        return _picked(points[-1])
    flag = chart.standing
    if flag is not None and flag.noticed >= period.start:
        return _changed(flag, whole, chart)
    if chart.stated_false_alarms is None:
        newest = whole[-1].rate
        sentence = f"Too few whole-herd rounds to tell a change: {_newest(whole[-1])}."
        basis = f"{counted(len(whole), 'whole-herd round')}; {between_words(newest)}."
        return Finding(TITLE, sentence, FindingKind.TOO_FEW, basis)
    return _steady(whole, chart)


def _picked(point: RoundPoint) -> Finding:
    rate = point.rate
    sentence = (
        f"The whole herd was never seen in one round, so this tells of the cows fetched, not of the herd: last time "
        f"{of_seen(rate.cows, rate.seen, rate.herd)} had a lesion."
    )
    return Finding(TITLE, sentence, FindingKind.PICKED, "Routine rounds of part of the herd.")


def _changed(flag: Flag, whole: list[RoundPoint], chart: ChangeChart) -> Finding:
    fewer = flag.direction is Direction.FALLEN
    word, kind = ("Fewer", FindingKind.BETTER) if fewer else ("More", FindingKind.WORSE)
    short = f"{word.lower()} cows with a lesion since {month_of(flag.since)}"
    before, since = flag.before, [point.rate for point in whole if point.day >= flag.since]
    cows, seen = sum(rate.cows for rate in since), sum(rate.seen for rate in since)
    rounds = "the round then" if len(since) == 1 else f"the {len(since)} rounds since"
    sentence = (
        f"{short[0].upper()}{short[1:]}: {cows} of {counted(seen, 'cow')} seen in {rounds}, "
        f"{before.cases} of {int(before.exposure)} in those before."
    )
    return Finding(TITLE, sentence, kind, _basis(whole, chart), short)


def _steady(whole: list[RoundPoint], chart: ChangeChart) -> Finding:
    flag = chart.standing
    since = f" since {month_of(flag.since)}" if flag else ""
    sentence = f"No change{since} that chance could not make: {_newest(whole[-1])}"
    if len(whole) > 1:
        older = whole[-2]
        sentence += f", {older.rate.cows} of {older.rate.seen} in {month_of(older.day)}"
    return Finding(TITLE, f"{sentence}.", FindingKind.STEADY, _basis(whole, chart))


def _newest(point: RoundPoint) -> str:
    rate = point.rate
    return f"{of_seen(rate.cows, rate.seen, rate.herd)} had a lesion in {month_of(point.day)}"


def _basis(whole: list[RoundPoint], chart: ChangeChart) -> str:
    told = chart.stated_false_alarms
    alarms = "" if told is None else _alarms(told)
    rounds = f"{counted(len(whole), 'whole-herd round')} since {month_of(whole[0].day)}"
    newest = f"the newest {between_words(whole[-1].rate)}"
    return f"{rounds}; {newest}.{alarms} Rounds fall in different seasons."


def _alarms(told: float) -> str:
    share = "under 0.1" if told < 0.001 else figure(100 * told)
    return f" A herd in which nothing changes is flagged in {share} of 100 such charts."


def between_words(rate: LesionRate) -> str:
    """ "47 per 100, 35 to 59 at 95 %" """
    if rate.per_100 is None or rate.interval is None:
        return "no cows seen"
    return f"{figure(rate.per_100)} per 100, {between(rate.interval)} at 95 %"


def month_of(day: date) -> str:
    """ "March 2026" """
    return f"{MONTHS[day.month - 1]} {day.year}"


MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip

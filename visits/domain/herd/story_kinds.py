"""Picture 2: new cases of infectious and of claw-horn lesions, year by year.

Method: new cases per 100 cow-years (`cow_year_rates`), from the day on which new cases can be told from old ones:
after the first whole-herd round, or a year after the first round of picked cows. Before it most lesions are found at
the first look at a foot and cannot be called new, so early years would read far too low and every later one would seem
to rise. Two years are compared only when both lie wholly after that day, and by `case_change`, which knows that cases
of one cow come together and that more looks find more. Two families are compared, so each at 97.5 % (Bonferroni). Which
family leads is told when Wilson's interval of its share of both leaves out a half. Unit: new cases per 100 cow-years.

When the figure must not be shown: where under three in four cows of the herd are on the list (`is_complete`), or with
under half a year watched. Cases of one cow come together, so the interval is if anything too narrow.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from trimops.paper.figures import counted
from visits.domain.herd.case_change import YearOfCases, case_change
from visits.domain.herd.case_history import Case, new_cases_between
from visits.domain.herd.change_flag import Direction
from visits.domain.herd.cow_year_rates import SETTLED_DAYS, CowYearRate, cow_year_rate
from visits.domain.herd.facts import HerdFacts
from visits.domain.herd.finding import Finding, FindingKind, StoryPeriod, between, figure
from visits.domain.herd.intervals import wilson
from visits.domain.herd.lesion_families import LesionFamily, counts_as
from visits.domain.herd.rounds import TrimRound
from visits.domain.herd.story_trend import month_of
from visits.domain.visit_states import VisitReason

TITLE = "New cases, infectious and claw-horn"
YEARS_SHOWN = 5
LEVEL_OF_EACH = 0.975
LEAST_DAYS_WATCHED = 180

Rates = tuple[CowYearRate, CowYearRate]
"""Infectious, claw-horn."""

Change = tuple[Direction, CowYearRate, CowYearRate]
"""Which way, the newer rate, the older one."""

_FAMILIES = (LesionFamily.INFECTIOUS, LesionFamily.CLAW_HORN)


@dataclass(frozen=True)
class FamilyYear:
    """One year with the rates of both families; `label` is "2025", "2026 so far"."""

    label: str
    infectious: CowYearRate
    claw_horn: CowYearRate


@dataclass(frozen=True)
class KindsStory:
    """`years` to show, and the period's rates that the finding speaks of. `since`: see `told_from`."""

    years: tuple[FamilyYear, ...]
    infectious: CowYearRate
    claw_horn: CowYearRate
    finding: Finding
    since: date | None


def kinds_story(
    facts: HerdFacts, cases: Sequence[Case], rounds: Sequence[TrimRound], period: StoryPeriod
) -> KindsStory:
    """Calendar years up to the period's end; the finding compares the period with the year before it."""
    since = told_from(rounds)
    first = min(max(period.start, since or period.end), period.end)
    now = _both(facts, cases, first, period.end)
    changes: list[Change] | None = None
    if since and period.before.start >= since:
        before = _both(facts, cases, period.before.start, period.before.end)
        changes = list(_changes(facts, cases, now, before)) if before[0].is_complete else None
    last = (period.end - timedelta(days=1)).year
    years = [
        _year(facts, cases, year, since, period.end)
        for year in range(last - YEARS_SHOWN + 1, last + 1)
        if since
    ]
    told = tuple(year for year in years if _is_watched(year.infectious) and year.infectious.is_complete)
    return KindsStory(told, now[0], now[1], _finding(now, changes, since, period), since)


def told_from(rounds: Sequence[TrimRound]) -> date | None:
    """The day from which on new cases can be told from old ones; None when no cow was seen."""
    if not rounds:
        return None
    days = [rounds[0].last + timedelta(days=1 + SETTLED_DAYS)]
    days += [each.last + timedelta(days=1) for each in rounds if each.is_whole_herd]
    return min(days)


def _both(facts: HerdFacts, cases: Sequence[Case], start: date, end: date) -> Rates:
    infectious, horn = (cow_year_rate(facts, cases, family, start, end) for family in _FAMILIES)
    return infectious, horn


def _year(facts: HerdFacts, cases: Sequence[Case], year: int, since: date, end: date) -> FamilyYear:
    first, until = max(date(year, 1, 1), since), min(date(year + 1, 1, 1), end)
    infectious, horn = _both(facts, cases, min(first, until), until)
    label = f"{year} so far" if until < date(year + 1, 1, 1) else str(year)
    if first > date(year, 1, 1):
        label = f"{label}, from {month_of(first).split()[0]}"
    return FamilyYear(label, infectious, horn)


def _is_watched(rate: CowYearRate) -> bool:
    """Whether enough time was watched to say anything."""
    return (rate.end - rate.start).days >= LEAST_DAYS_WATCHED and rate.cow_years > 0


def _changes(facts: HerdFacts, cases: Sequence[Case], now: Rates, before: Rates) -> Iterator[Change]:
    """The families whose cases really went up or down."""
    for new, old in zip(now, before, strict=True):
        newer, older = (_year_of_cases(facts, cases, rate) for rate in (new, old))
        direction = case_change(newer, older, LEVEL_OF_EACH)
        if direction is not None:
            yield direction, new, old


def _year_of_cases(facts: HerdFacts, cases: Sequence[Case], rate: CowYearRate) -> YearOfCases:
    fresh = new_cases_between(cases, rate.start, rate.end)
    by_cow = Counter(case.cow for case in fresh if counts_as(case.lesion, rate.code))
    looks = sum(look.reason is VisitReason.ROUTINE for look in facts.seen_between(rate.start, rate.end))
    return YearOfCases(by_cow, rate.cow_years, looks)


def _finding(now: Rates, changes: list[Change] | None, since: date | None, period: StoryPeriod) -> Finding:
    if not _is_watched(now[0]):
        told = f": they are counted from {month_of(since)} on" if since else ""
        sentence = f"Too little time to tell new cases from old ones{told}."
        return Finding(TITLE, sentence, FindingKind.TOO_FEW)
    if not now[0].is_complete:
        sentence = "Too few of the herd's cows are on the list to count new cases over cow-years."
        return Finding(TITLE, sentence, FindingKind.TOO_FEW, _basis(now))
    if changes:
        return _changed(changes, now)
    return _led(now, period, is_compared=changes is not None)


def _changed(changes: list[Change], now: Rates) -> Finding:
    told = [
        f"{_word(direction)} new {new.what}, {new.cases} in {figure(new.cow_years)} cow-years against {old.cases} in "
        f"{figure(old.cow_years)} the year before"
        for direction, new, old in changes
    ]
    sentence = "; ".join(told)
    rises = any(direction is Direction.RISEN for direction, _, _ in changes)
    kind = FindingKind.WORSE if rises else FindingKind.BETTER
    short = f"{_word(changes[0][0])} new {changes[0][1].what} than the year before"
    return Finding(TITLE, f"{sentence[0].upper()}{sentence[1:]}.", kind, _basis(now), short)


def _word(direction: Direction) -> str:
    return "more" if direction is Direction.RISEN else "fewer"


def _led(now: Rates, period: StoryPeriod, *, is_compared: bool) -> Finding:
    infectious, horn = now
    when = period.words if horn.start == period.start else f"since {month_of(horn.start)}"
    both = infectious.cases + horn.cases
    counts = f"{counted(infectious.cases, 'infectious', 'infectious')} and {horn.cases} claw-horn"
    if not both:
        sentence = f"No new case was seen {when}, in {figure(horn.cow_years)} cow-years."
        return Finding(TITLE, sentence, FindingKind.PLAIN, _basis(now))
    if wilson(infectious.cases, both).holds(0.5):
        sentence = f"Neither kind leads for sure: {counts} new cases {when}."
        return Finding(TITLE, sentence, FindingKind.STEADY, _basis(now))
    leader = max(now, key=lambda rate: rate.cases)
    sentence = f"Most new cases are {leader.what}: {counts} {when}."
    if is_compared:
        sentence += " No change told against the year before."
    return Finding(TITLE, sentence, FindingKind.PLAIN, _basis(now), f"most new cases are {leader.what}")


def _basis(now: Rates) -> str:
    parts = [
        f"{rate.what} {figure(rate.per_100)} per 100 cow-years, {between(rate.interval)} at 95 %"
        for rate in now
        if rate.per_100 is not None and rate.interval is not None
    ]
    return (
        f"{figure(now[0].cow_years)} cow-years; {'; '.join(parts)}. Only cases seen at the crush are counted."
    )

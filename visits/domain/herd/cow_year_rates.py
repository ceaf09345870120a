"""New cases per 100 cow-years: how often feet go wrong, whatever number of cows was looked at.

Method: cases by the day they began (`case_history`; looks at the same lesion of the same foot are one case) / time of
all known cows in the herd, 365.25 days to a cow-year, Garwood's exact Poisson interval at 95 %. A cow can have several
cases, on four feet, so a rate can pass 100. Unit: cases per 100 cow-years.

What a first look finds may have been there for long. Counting therefore starts the day after any cow of the herd was
first looked at, and a case found when the foot was lifted for the first time is left out (`counted_cases`) when the
cow was there already and less than a year has gone by since, or when nothing is known of her before that look. Her
time counts all the same, so the first year reads a little low rather than far too high. The year is our choice.

Source of the measure: as in Afonso et al. 2020, Front Vet Sci 7:542 (trade-facts 4). Interval: Garwood 1936.

Must not be shown when `is_complete` is false: with many cows of the herd not on the list, their time is missing and
every rate is too high. Cases of one cow or one bad month come together, so the interval is if anything too narrow.
Cases that nobody looked for are not counted: a farm that presents fewer cows has fewer cases.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from visits.domain.herd.case_history import Case, new_cases_between
from visits.domain.herd.facts import DAYS_PER_YEAR, HerdFacts
from visits.domain.herd.intervals import Interval, poisson_exact
from visits.domain.herd.lesion_families import (
    HEEL_EROSION_IS,
    LesionFamily,
    What,
    counts_as,
    what_label,
)
from visits.domain.lesion_names import family_of
from visits.domain.lesions import LesionCode

LEAST_SHARE_OF_COWS_KNOWN = 0.75
SETTLED_DAYS = 365


@dataclass(frozen=True)
class CowYearRate:
    """`cases` in `cow_years`, counted from `start` on and before `end`. `per_100` and `interval` per 100 cow-years.

    `per_100` is None without any cow-time. `is_complete`: at least three in four of the cow-years that the told size
    of the herd would give are known cows'.
    """

    what: str
    cases: int
    cow_years: float
    per_100: float | None
    interval: Interval | None
    code: What
    start: date
    end: date
    is_complete: bool


def cow_year_rates(
    facts: HerdFacts,
    cases: Iterable[Case],
    start: date,
    end: date,
    heel_erosion: LesionFamily = HEEL_EROSION_IS,
) -> tuple[CowYearRate, ...]:
    """Any lesion, the three families, then every lesion that had a new case, the most frequent first."""
    span = _Span.of(facts, start, end)
    counted = counted_cases(facts, span.new(cases))
    lesions = [span.rate(code, counted) for code in sorted({case.lesion for case in counted})]
    families = [span.rate(family, counted, heel_erosion) for family in LesionFamily]
    return (span.rate(None, counted), *families, *sorted(lesions, key=lambda rate: -rate.cases))


def cow_year_rate(
    facts: HerdFacts,
    cases: Iterable[Case],
    what: What,
    start: date,
    end: date,
    heel_erosion: LesionFamily = HEEL_EROSION_IS,
) -> CowYearRate:
    """The rate of one lesion, family or of any lesion, over the days on which new cases could be told as new.

    ValueError for a kind of a lesion (sole ulcer): cases are gathered by the parent (ulcer).
    """
    if isinstance(what, LesionCode) and family_of(what) is not what:
        raise ValueError(f"cases of {what} are gathered as {family_of(what)}")
    span = _Span.of(facts, start, end)
    return span.rate(what, counted_cases(facts, span.new(cases)), heel_erosion)


def watched_from(facts: HerdFacts) -> date | None:
    """The day after any cow was first looked at; None when none ever was."""
    return facts.first_day + timedelta(days=1) if facts.first_day else None


def counted_cases(facts: HerdFacts, cases: Iterable[Case]) -> tuple[Case, ...]:
    """The cases that can be told to have begun in the cow's time here: without most that a first look found."""
    since = watched_from(facts)
    return tuple(case for case in cases if since is not None and _is_counted(facts, case, since))


def _is_counted(facts: HerdFacts, case: Case, since: date) -> bool:
    life = facts.by_cow.get(case.cow)
    if life is None:
        return False
    if not case.is_first_look:
        return True
    known_before = life.first_day < case.first
    return known_before and (life.first_day >= since or case.first >= since + timedelta(days=SETTLED_DAYS))


@dataclass(frozen=True)
class _Span:
    """The days over which one rate is counted, and the cow-years in them."""

    start: date
    end: date
    cow_years: float
    told_years: float

    @classmethod
    def of(cls, facts: HerdFacts, start: date, end: date) -> "_Span":
        """From `start`, or from when the herd was watched if that is later."""
        since = watched_from(facts)
        first = end if since is None else min(max(start, since), end)
        told = facts.herd_size * (end - first).days / DAYS_PER_YEAR
        return cls(first, end, facts.cow_years(first, end), told)

    def new(self, cases: Iterable[Case]) -> tuple[Case, ...]:
        return new_cases_between(cases, self.start, self.end)

    def rate(
        self, what: What, counted: tuple[Case, ...], heel_erosion: LesionFamily = HEEL_EROSION_IS
    ) -> CowYearRate:
        count = sum(counts_as(case.lesion, what, heel_erosion) for case in counted)
        years, told = self.cow_years, self.told_years
        return CowYearRate(
            what=what_label(what),
            cases=count,
            cow_years=years,
            per_100=100 * count / years if years else None,
            interval=poisson_exact(count).times(100 / years) if years else None,
            code=what,
            start=self.start,
            end=self.end,
            is_complete=bool(told) and years >= LEAST_SHARE_OF_COWS_KNOWN * told,
        )

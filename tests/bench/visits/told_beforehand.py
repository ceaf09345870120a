"""The last months of a drawn history, told beforehand by what was learned from the months before."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from statistics import mean

from tests.bench.visits.drawn_months import LEAVE, MEAL, Made, MadeDay, draw_months, drives_of, visits_of
from visits.domain.arrival_windows.day_ahead import DayAhead, DayStop, Spread
from visits.domain.arrival_windows.learn_drives import learn_drives
from visits.domain.arrival_windows.spans_of_day import DaySpans, spans_of_day
from visits.domain.arrival_windows.visit_so_far import Expected, SoFar, visit_so_far
from visits.domain.visit_length import LengthFigures, expected_length
from visits.domain.visit_lengths.finished_visit import FinishedVisit
from visits.domain.visit_lengths.learn_lengths import flat_minutes_per_cow, learn_lengths
from visits.domain.visit_lengths.learned_rule import LearnedRule, LikelyLength, likely_length

LEARNED_SHARE = 0.8
FIGURES = LengthFigures()


@dataclass(frozen=True)
class Told:
    """Of the held-out months: absolute errors of each rule in minutes, and for each span whether it was kept."""

    learned: list[float]
    flat: list[float]
    line: list[float]
    figures: list[float]
    length_kept: list[bool]
    arrival_kept: list[bool]
    later_kept: list[bool]
    retimed_kept: list[bool]
    retimed_width: list[float]
    first_told_width: list[float]
    half_way: list[float]
    half_way_before: list[float]
    half_way_kept: list[bool]


def tell_months(seed: int, months: int = 18, farms: int = 40, draws: int = 300) -> Told:
    """Learn from the first four fifths of the days, tell the last fifth."""
    days = draw_months(seed, months, farms)
    split = round(len(days) * LEARNED_SHARE)
    before, after = days[:split], days[split:]
    visits = visits_of(before)
    lesson = learn_lengths(visits, FIGURES)
    if lesson is None:
        raise AssertionError("too few visits to learn from")
    spread = learn_drives(Spread(lesson.rule.shape, lesson.rule.day_share), *drives_of(before))
    held = visits_of(after)
    told = [likely_length(lesson.rule, visit.asked) for visit in held]
    arrivals = [_arrivals(day, lesson.rule, spread, draws) for day in after]
    half = [_half_way(made, lesson.rule) for day in after for made in day.stops if len(made.let_go) >= 6]
    retimed = [_retimed(day, lesson.rule, spread, draws) for day in after if len(day.stops) > 1]
    return Told(
        learned=_errors([length.minutes for length in told], held),
        flat=_errors([flat_minutes_per_cow(visits) * visit.asked.head_count for visit in held], held),
        line=_errors(_by_line(visits, held), held),
        figures=_errors([_by_figures(visit) for visit in held], held),
        length_kept=[_within(length, visit) for length, visit in zip(told, held, strict=True)],
        arrival_kept=[kept for row in arrivals for kept in row],
        later_kept=[kept for row in arrivals for kept in row[1:]],
        retimed_kept=[kept for kept, _, _ in retimed],
        retimed_width=[width for _, width, _ in retimed],
        first_told_width=[width for _, _, width in retimed],
        half_way=[error for error, _, _ in half],
        half_way_before=[error for _, error, _ in half],
        half_way_kept=[kept for _, _, kept in half],
    )


def _errors(minutes: Sequence[float], visits: Sequence[FinishedVisit]) -> list[float]:
    return [abs(told - visit.minutes) for told, visit in zip(minutes, visits, strict=True)]


def _by_line(visits: Sequence[FinishedVisit], held: Sequence[FinishedVisit]) -> list[float]:
    """So many minutes a visit and so many a cow, by least squares: the best that a plain rule of two figures can do."""
    cows, minutes = [v.asked.head_count for v in visits], [v.minutes for v in visits]
    middle, level = mean(cows), mean(minutes)
    across = sum((c - middle) * (m - level) for c, m in zip(cows, minutes, strict=True))
    slope = across / sum((c - middle) ** 2 for c in cows)
    return [level + slope * (visit.asked.head_count - middle) for visit in held]


def _by_figures(visit: FinishedVisit) -> float:
    asked = visit.asked
    counts = {"head_count": asked.head_count, "corrective_count": asked.corrective_count}
    return expected_length(FIGURES, asked.setup, **counts).minutes


def _within(length: LikelyLength, visit: FinishedVisit) -> bool:
    return length.low <= visit.minutes <= length.high


def _stops(day: MadeDay, rule: LearnedRule) -> list[DayStop]:
    told = [likely_length(rule, made.visit.asked) for made in day.stops]
    return [DayStop(m.drive, t.minutes, t.spread) for m, t in zip(day.stops, told, strict=True)]


def _spans(stops: list[DayStop], spread: Spread, draws: int, now: float | None = None) -> DaySpans:
    return spans_of_day(DayAhead(LEAVE, tuple(stops), 0.0, MEAL, now), spread, draws=draws)


def _arrivals(day: MadeDay, rule: LearnedRule, spread: Spread, draws: int) -> list[bool]:
    """Told before the van leaves."""
    spans = _spans(_stops(day, rule), spread, draws).stops
    return [s.arrive.low <= m.begun <= s.arrive.high for s, m in zip(spans, day.stops, strict=True)]


def _retimed(day: MadeDay, rule: LearnedRule, spread: Spread, draws: int) -> tuple[bool, float, float]:
    """The second farm, told anew when the first is finished; the width of its span then and before."""
    stops = _stops(day, rule)
    first, second = day.stops[0], day.stops[1]
    before = _spans(stops, spread, draws).stops[1].arrive
    done = first.begun + first.visit.minutes
    stops[0] = replace(stops[0], begun=first.begun, finished=done)
    after = _spans(stops, spread, draws, now=done).stops[1].arrive
    # The start is kept in whole minutes, so a drive with no luck in it may end half a minute off.
    kept = after.low - 0.5 <= second.begun <= after.high + 0.5
    return kept, after.high - after.low, before.high - before.low


def _half_way(made: Made, rule: LearnedRule) -> tuple[float, float, bool]:
    """Once half the cows are done: the error of the length told then, of that told before; whether its span held."""
    told, done = likely_length(rule, made.visit.asked), len(made.let_go) // 2
    before = max(0.0, told.minutes - told.at_crush - told.after)
    expected = Expected(before, told.at_crush, told.after, told.cows, told.spread)
    minutes, spread = visit_so_far(expected, SoFar(done, made.let_go[done - 1]))
    low, high = (minutes + spread * rule.shape.error_below(share) for share in (0.1, 0.9))
    real = made.visit.minutes
    return abs(minutes - real), abs(told.minutes - real), low <= real <= high

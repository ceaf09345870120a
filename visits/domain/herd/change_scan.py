"""How unlikely the newest periods are, given the totals so far, if nothing had changed: for many histories at once.

With a steady rate, the cases of the last periods among all cases so far have a law without the rate in it: they are
hypergeometric when cows seen are counted, binomial (by the shares of cow-years) when cases are counted over time.
So the tail can be had exactly, however few the cases are and whatever the true rate is. Mid-P (Lancaster 1961, from
memory) counts the outcome itself half, which keeps small counts from being judged too mildly.

Periods of a farm may differ by more than chance, by season or by infection. So the spread of the past is measured
(Pearson's chi square over its degrees of freedom), and where it is above 1 the normal score of the chance is
divided by its root, as with a wider scale. What is stated of steady farms is drawn with the same step, so it stays
exact.

A figure that lies within `_near` standard deviations cannot be that unlikely and is not worked out. The lightest
tail is that of no case at all: half of exp(-mean) at sqrt(mean) deviations; a twentieth is taken off for safety.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import special

from visits.domain.herd.change_counts import ChangeRule, Counting

Floats = NDArray[np.float64]
Flags = NDArray[np.bool_]
Rows = NDArray[np.intp]
TERMS, SMALLEST_TERM = 64, 1e-14


@dataclass(frozen=True)
class Running:
    """Running totals from 0 on: of cases and of their squares by what they are counted over (a row a history), and
    of what they are counted over (the same for all)."""

    cases: Floats
    squares: Floats
    over: Floats


def running(cases: Floats, exposure: Floats) -> Running:
    """Totals of histories (rows of cases) over the same exposures, none of them 0."""
    return Running(_totals(cases), _totals(cases**2 / exposure), _totals(exposure))


def _totals(amounts: Floats) -> Floats:
    before = np.zeros((*amounts.shape[:-1], 1))
    return np.concatenate([before, np.cumsum(amounts, axis=-1)], axis=-1)


def first_to_compare(newest: int, begin: int, rule: ChangeRule) -> range:
    """The periods at which a change noticed in period `newest` may have begun, the past beginning at `begin`."""
    return range(max(begin + rule.least_past, newest - rule.window + 1), newest + 1)


def ever_flagged(cases: Floats, exposure: Floats, counting: Counting, rule: ChangeRule) -> Flags:
    """For each history (a row of cases) whether any period of it is flagged."""
    flagged: Flags = first_flagged(cases, exposure, counting, rule) < cases.shape[1]
    return flagged


def first_flagged(cases: Floats, exposure: Floats, counting: Counting, rule: ChangeRule) -> Rows:
    """For each history the first period in which a change is flagged; the number of periods when there is none."""
    told, periods = running(cases, exposure), cases.shape[1]
    first = np.full(len(cases), periods)
    for newest in range(rule.least_past, periods):
        for since in first_to_compare(newest, 0, rule):
            rise, fall = tail_chances(told, (0, since, newest + 1), counting, rule)
            first[(np.minimum(rise, fall) <= rule.chance) & (first == periods)] = newest
    return first


def tail_chances(
    told: Running, marks: tuple[int, int, int], counting: Counting, rule: ChangeRule
) -> tuple[Floats, Floats]:
    """Chances of as many and of as few cases from the middle mark on, out of those from the first mark on.

    1 where nothing is to be told: too few cases, or a figure near what was expected. On the wider scale of the past
    where that varied by more than chance.
    """
    begin, since, end = marks
    cases, over = told.cases[:, end], told.over[end]
    all_cases, new_cases = cases - told.cases[:, begin], cases - told.cases[:, since]
    all_over, new_over = over - told.over[begin], over - told.over[since]
    rise, fall = np.ones(len(told.cases)), np.ones(len(told.cases))
    away = np.abs(_deviations(new_cases, all_cases, new_over, all_over, counting))
    worth = np.flatnonzero((away > _near(rule.chance)) & (all_cases >= rule.least_cases))
    if worth.size:
        tails = _mid_tails(new_cases[worth], all_cases[worth], new_over, all_over, counting)
        wider = np.sqrt(_spread(told, begin, since, worth, counting))
        rise[worth], fall[worth] = (special.ndtr(special.ndtri(tail) / wider) for tail in tails)
    return rise, fall


def _spread(told: Running, begin: int, since: int, rows: Rows, counting: Counting) -> Floats:
    """How many times the variance of chance the periods of the past have; at least 1."""
    cases, over = told.cases[rows, since] - told.cases[rows, begin], told.over[since] - told.over[begin]
    squares = told.squares[rows, since] - told.squares[rows, begin]
    rate = cases / over
    variance = rate * (1 - rate) if counting is Counting.OF_COWS_SEEN else rate
    chi_square = (squares - cases * rate) / np.maximum(variance, 1e-12)
    spread: Floats = chi_square / max(1, since - begin - 1)
    return np.maximum(1.0, spread)


def _near(chance: float) -> float:
    return 0.95 * math.sqrt(max(0.0, -math.log(2 * chance)))


def _deviations(new: Floats, cases: Floats, new_over: float, over: float, counting: Counting) -> Floats:
    """How many standard deviations the newest cases lie from what was to be expected."""
    part = new_over / over
    variance = cases * part * (1 - part)
    if counting is Counting.OF_COWS_SEEN:
        variance = variance * (over - cases) / (over - 1)
    deviations: Floats = (new - cases * part) / np.sqrt(np.maximum(variance, 1e-12))
    return deviations


def _mid_tails(
    new: Floats, cases: Floats, new_over: float, over: float, counting: Counting
) -> tuple[Floats, Floats]:
    """Chances of as many and of as few. The smaller one is summed up itself: 1 less the larger one would come to 0."""
    is_many = new * over > cases * new_over
    here, part = np.where(is_many, new, cases - new), np.where(is_many, new_over, over - new_over)
    if counting is Counting.OF_COWS_SEEN:
        tail = _as_many_of_cows(here, cases, part, over)
    else:
        more = special.bdtrc(here, cases.astype(np.int64), part / over)
        tail = more + _just_as_many(here, cases, part / over) / 2
    tail = np.clip(tail, 0.0, 1.0)
    return np.where(is_many, tail, 1 - tail), np.where(is_many, 1 - tail, tail)


def _just_as_many(here: Floats, cases: Floats, share: Floats) -> Floats:
    """The binomial chance of just so many. By log gamma, not by `scipy.stats`, whose loading takes half a second of
    every start of the program."""
    logs = _log_ways(cases, here) + special.xlogy(here, share) + special.xlog1py(cases - here, -share)
    chances: Floats = np.exp(logs)
    return chances


def _as_many_of_cows(here: Floats, cases: Floats, part: Floats, over: float) -> Floats:
    """Hypergeometric mid-P of so many cases or more in that part: the first chance by log gamma, the rest by ratios."""
    free = over - cases - part
    first = np.exp(
        _log_ways(cases, here)
        + _log_ways(over - cases, part - here)
        - _log_ways(np.full_like(part, over), part)
    )
    sums, last, steps = np.full(len(here), 0.5), np.ones(len(here)), here[:, None] + np.arange(TERMS)
    while (last > SMALLEST_TERM * sums).any():
        above = np.maximum(cases[:, None] - steps, 0.0) * np.maximum(part[:, None] - steps, 0.0)
        terms = last[:, None] * np.cumprod(above / ((steps + 1) * (free[:, None] + steps + 1)), axis=1)
        sums, last, steps = sums + terms.sum(axis=1), terms[:, -1], steps + TERMS
    tail: Floats = first * sums
    return tail


def _log_ways(all_of_them: Floats, chosen: Floats) -> Floats:
    ways: Floats = (
        special.gammaln(all_of_them + 1)
        - special.gammaln(chosen + 1)
        - special.gammaln(all_of_them - chosen + 1)
    )
    return ways


def stable_histories(cases: int, exposure: Floats, counting: Counting, rule: ChangeRule) -> Floats:
    """Histories (rows) with so many cases in all, drawn as chance alone would spread them.

    The seed is made of the counts themselves: one chart has one answer, and two farms do not share their luck.
    """
    chance = np.random.default_rng([cases, *(round(1000 * float(amount)) for amount in exposure)])
    if counting is Counting.OF_COWS_SEEN:
        seen = exposure.astype(np.int64)
        drawn = chance.multivariate_hypergeometric(seen, cases, size=rule.draws, method="marginals")
    else:
        drawn = chance.multinomial(cases, exposure / exposure.sum(), size=rule.draws)
    histories: Floats = drawn.astype(np.float64)
    return histories

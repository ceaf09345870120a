"""The flag of change, held against what it states: 40,000 steady herds, and how soon a doubled rate is noticed.

Bars (issue 5): over 10,000 steady herds and more, the share that show any flag lies within a tenth of what their
charts state; once for shares of cows seen in whole-herd rounds, once for cases over cow-years. The herds' true
rates are drawn anew for each herd and never told to the chart. Printed besides: herds by how many cases a period
brings, the delay with which a doubled and a halved rate are noticed, and what becomes of the rate of flags when
cases are not independent (the chart does not promise anything there).
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from itertools import pairwise
from statistics import mean, median

import numpy as np

from visits.domain.herd.change_counts import USUAL_CHANGE_RULE, Counting
from visits.domain.herd.change_scan import ever_flagged, first_flagged, stable_histories

FARMS, RATES = 100, 200
"""So many lists of farm sizes and periods, and on each so many true rates: 20,000 herds of each way of counting."""
WITHIN = 0.1
QUICK = replace(USUAL_CHANGE_RULE, draws=50)
"""Few draws for each herd: over 20,000 herds the mean of what is stated rests on a million."""
BANDS = (0, 2, 5, 15, 1000)


@dataclass(frozen=True)
class SteadyHerd:
    """One herd: how many cases a period brings on average, what its chart states, and whether it was flagged."""

    cases_a_period: float
    stated: float
    flagged: bool


def main() -> None:
    for counting in Counting:
        herds = list(steady_herds(counting, FARMS, RATES, seed=5))
        print(f"{counting.label}: {_line(herds)}")
        for low, high in pairwise(BANDS):
            part = [herd for herd in herds if low <= herd.cases_a_period < high]
            print(f"    {low:4} to {high:4} cases a period: {_line(part)}")
        check(herds)
    print_delays()
    print_unsteady()


def steady_herds(counting: Counting, farms: int, rates: int, seed: int, rule=QUICK) -> Iterator[SteadyHerd]:
    """Farms with their periods; on each, herds with a true rate each, flagged or not, and what is stated for them."""
    chance = np.random.default_rng(seed)
    periods, rate_of = DRAWN[counting]
    for _ in range(farms):
        exposure = periods(chance)
        rate = rate_of(chance, exposure, rates)
        cases = drawn_cases(chance, exposure, rate[:, None], counting)
        flagged = ever_flagged(cases, exposure, counting, rule)
        stated = stated_for(cases.sum(axis=1), exposure, counting, rule)
        cases_a_period = rate * exposure.mean()
        yield from map(SteadyHerd, cases_a_period.tolist(), stated, flagged.tolist())


def stated_for(totals, exposure, counting: Counting, rule) -> list[float]:
    """What each herd's chart states: `false_alarms` of the product, for many totals at one go."""
    steady = [stable_histories(int(total), exposure, counting, rule) for total in totals]
    return (
        ever_flagged(np.concatenate(steady), exposure, counting, rule).reshape(len(totals), -1).mean(axis=1)
    )


def drawn_cases(chance, exposure, rates, counting: Counting):
    """Cases of each period, drawn from the true rates."""
    if counting is Counting.OF_COWS_SEEN:
        return chance.binomial(exposure.astype(int), rates).astype(float)
    return chance.poisson(exposure * rates).astype(float)


def _rounds(chance):
    """Cows seen: 60 to 400 cows, 2 to 4 rounds in each of 5 years, 75 to 100 in 100 of them."""
    cows, rounds = chance.integers(60, 401), 5 * chance.integers(2, 5)
    return np.round(cows * chance.uniform(0.75, 1.0, rounds))


def _shares(chance, exposure, herds):
    """3 to 40 in 100 cows with a lesion."""
    return np.exp(chance.uniform(np.log(0.03), np.log(0.4), herds))


def _quarters(chance):
    """Cow-years of 5 to 10 years of quarters: 60 to 400 cows, a herd that may halve or double on the way."""
    quarters = 4 * chance.integers(5, 11)
    grown = np.linspace(1, chance.uniform(0.5, 2), quarters)
    return chance.uniform(15, 100) * grown * chance.uniform(0.9, 1.1, quarters)


def _case_rates(chance, exposure, herds):
    """Half a case to 15 cases a quarter."""
    return chance.uniform(0.5, 15, herds) / exposure.mean()


DRAWN: dict[Counting, tuple[Callable, Callable]] = {
    Counting.OF_COWS_SEEN: (_rounds, _shares),
    Counting.OVER_COW_YEARS: (_quarters, _case_rates),
}


def check(herds: list[SteadyHerd]) -> None:
    """AssertionError when what was measured is not within a tenth of what was stated."""
    measured, stated = mean(h.flagged for h in herds), mean(h.stated for h in herds)
    if abs(measured - stated) > WITHIN * stated:
        raise AssertionError(f"flagged {measured:.4f} of the steady herds, stated {stated:.4f}")


def _line(herds: list[SteadyHerd]) -> str:
    if not herds:
        return "none"
    measured, stated = mean(h.flagged for h in herds), mean(h.stated for h in herds)
    error = (measured * (1 - measured) / len(herds)) ** 0.5
    return (
        f"{len(herds):6} steady herds, flagged {measured:.4f} (give or take {error:.4f}), "
        f"stated {stated:.4f}, ratio {measured / stated if stated else float('nan'):.3f}"
    )


def delays(counting: Counting, exposure, rate: float, factor: float, past: int, herds: int, seed: int):
    """Periods until a change by `factor` after `past` periods is flagged, for each herd; None when it never was.

    Flags before the change are false alarms, whose rate is measured above: such herds are left out.
    """
    chance = np.random.default_rng(seed)
    rates = np.where(np.arange(len(exposure)) < past, rate, rate * factor)
    cases = drawn_cases(chance, exposure, np.tile(rates, (herds, 1)), counting)
    first = first_flagged(cases, exposure, counting, USUAL_CHANGE_RULE)
    return [int(n) - past + 1 if n < len(exposure) else None for n in first if n >= past]


def print_delays() -> None:
    print("periods until a change is flagged, after 8 periods of past (1: at once), 1,000 herds each")
    print("  rounds: cows  of 100  by      median  mean  within 1  2  4  8 (of 100)")
    for factor in (2.0, 0.5):
        for cows in (60, 120, 250, 400):
            for rate in (0.05, 0.1, 0.2):
                seen = np.full(20, float(cows))
                told = delays(Counting.OF_COWS_SEEN, seen, rate, factor, past=8, herds=1000, seed=7)
                print(f"          {cows:4}  {100 * rate:5.0f}  x{factor:<4}  {delay_line(told)}")
    print("  quarters: cases a quarter  by")
    for factor in (2.0, 0.5):
        for cases in (1.0, 3.0, 8.0, 15.0):
            told = delays(Counting.OVER_COW_YEARS, np.full(20, 25.0), cases / 25, factor, 8, 1000, seed=7)
            print(f"          {cases:4.0f}         x{factor:<4}  {delay_line(told)}")


def delay_line(told: list[int | None]) -> str:
    """Median and mean of those that were noticed within twelve periods, and how many within 1, 2, 4 and 8."""
    found = [n for n in told if n is not None]
    within = "  ".join(f"{100 * sum(n <= limit for n in found) / len(told):3.0f}" for limit in (1, 2, 4, 8))
    middle = f"{median(n if n is not None else 99 for n in told):4.1f}".replace("99.0", " >12")
    return f"  {middle}  {mean(found) if found else float('nan'):4.1f}   {within}"


def print_unsteady() -> None:
    """Flags of 2,000 herds whose mean does not change, but whose cases do not come singly and by chance."""
    print("not promised: 12 rounds of 150 cows, 15 in 100 with a lesion, 2,000 herds each")
    chance = np.random.default_rng(11)
    seen, herds = np.full(12, 150.0), 2000
    for deviation in (0.0, 0.02, 0.04):
        rates = np.clip(chance.normal(0.15, deviation, (herds, 12)), 0.001, 0.999)
        words = f"rounds differ by {100 * deviation:.0f} in 100 (standard deviation)"
        print(f"    {words}: flagged {_flagged_of(chance, seen, rates):.3f}")
    season = np.tile(0.15 * (1 + 0.3 * np.sin(np.pi / 2 * np.arange(12))), (herds, 1))
    print(f"    season, 30 % up and down: flagged {_flagged_of(chance, seen, season):.3f}")
    prone = chance.beta(0.45, 2.55, (herds, 150))
    cases = np.stack([(chance.random(prone.shape) < prone).sum(axis=1) for _ in seen], axis=1).astype(float)
    told = ever_flagged(cases, seen, Counting.OF_COWS_SEEN, USUAL_CHANGE_RULE).mean()
    print(f"    the same cows round after round, some of them prone: flagged {told:.3f}")


def _flagged_of(chance, seen, rates) -> float:
    cases = chance.binomial(seen.astype(int), rates).astype(float)
    return float(ever_flagged(cases, seen, Counting.OF_COWS_SEEN, USUAL_CHANGE_RULE).mean())


if __name__ == "__main__":
    main()

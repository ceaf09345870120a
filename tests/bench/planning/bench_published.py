"""Published instances against the planner: `python -m tests.bench published`.

Per instance: what it costs (or collects), the published or proven total, the gap; per family the mean and the worst.
Every plan has passed the audit. Bars: all of Solomon's 25 customers at the proven total, and a mean gap of at most
0.5 % on 100 customers. Instances of 100 customers get `seconds`, smaller ones three tenths of it.
The last column is the processor time got: on two free cores about twice the seconds; much less tells of a busy machine.
Sources: fixtures/routing/SOURCE.md and totals.json.
"""

import argparse
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from os import times
from statistics import fmean
from time import perf_counter

from tests.published.orienteering import orienteering_week, profit_of
from tests.published.several_days import several_days_week
from tests.published.solomon import FILES, published, read_solomon, solomon_week
from tests.published.solved import solved
from tests.published.tsplib import FILES as TOURS
from tests.published.tsplib import read_cities, tour_week

SMALL_SHARE = 0.3
MOST_MEAN_GAP = 0.5
LARGE = "Solomon 100"
SMALL = "Solomon 25"


@dataclass(frozen=True)
class Case:
    """One instance. `figure` turns a plan's cost into what is published; `sign` -1 where more is better."""

    family: str
    name: str
    week: dict
    best: float
    large: bool = False
    figure: Callable[[float], float] = float
    sign: int = 1

    def gap(self, cost: float) -> float:
        """Per cent worse than the best known; below 0 where better."""
        return round(100 * self.sign * (self.figure(cost) - self.best) / self.best, 6) + 0.0  # no minus 0


def cases() -> Iterator[Case]:
    yield from solomon_cases()
    lengths = published("tsplib")
    for name in TOURS:
        yield Case("TSPLIB, 14 to 70 cities", name, tour_week(read_cities(name)), lengths[name])
    kinds = ("orienteering_teams", "orienteering", "orienteering_unproven")
    for name, best in (row for kind in kinds for row in published(kind).items()):
        yield orienteering_case(name, best)
    for name, best in published("several_days").items():
        file, size, shut = name.replace("/", ".").split(".")
        week = several_days_week(read_solomon(file, int(size)), int(shut))
        yield Case("five days, customers shut on some (own)", name, week, best)


def solomon_cases() -> Iterator[Case]:
    totals = published("solomon")
    for size in (25, 50, 100):
        for file in FILES:
            name = f"{file}.{size}"
            week = solomon_week(read_solomon(file, size))
            yield Case(f"Solomon {size}", name, week, totals[name], size == 100)
    for file in FILES:
        week = several_days_week(read_solomon(file, 100), 0)
        yield Case("Solomon 100 over five days", f"{file}.100", week, totals[f"{file}.100"], large=True)


def orienteering_case(name: str, best: float) -> Case:
    file, size, vehicles = name.replace("/", ".").split(".")
    instance = read_solomon(file, int(size))

    def collected(cost: float) -> float:
        return profit_of(instance, cost)

    week = orienteering_week(instance, int(vehicles))
    return Case("team orienteering", name, week, best, int(size) == 100, collected, -1)


def main(seconds: float = 10.0, family: str = "") -> dict[str, list[float]]:
    """Prints a line per instance and per family; returns the gaps; SystemExit where a bar is missed."""
    gaps: dict[str, list[float]] = {}
    missing = []
    print(
        f"{'family':40} {'instance':12} {'ours':>10} {'best known':>10} {'gap':>10} {'wall':>9} {'cores':>9}"
    )
    for case in cases():
        if family.lower() not in case.family.lower():
            continue
        began, used = perf_counter(), processor_time()
        plan = solved(case.week, seconds=seconds if case.large else SMALL_SHARE * seconds)
        took, got, cost = perf_counter() - began, processor_time() - used, plan["cost"]["total"]
        gaps.setdefault(case.family, []).append(case.gap(cost))
        left = [out["job"] for out in plan["left_out"]] if case.sign == 1 else []
        missing += [f"{case.name} leaves out {job}" for job in left]
        figures = (
            f"{case.figure(cost):10.1f} {case.best:10.1f} {case.gap(cost):+8.2f} % {took:7.1f} s {got:7.1f} s"
        )
        print(f"{case.family:40} {case.name:12} {figures}", flush=True)
    for name, row in gaps.items():
        print(f"{name:40} mean {fmean(row):+.2f} %, worst {max(row):+.2f} % of {len(row)}")
    missed = missing + missed_bars(gaps)
    if missed:
        raise SystemExit("\n".join(missed))
    return gaps


def processor_time() -> float:
    """Seconds on any core, of this process and of those it waited for."""
    return sum(times()[:4])


def missed_bars(gaps: dict[str, list[float]]) -> list[str]:
    missed = []
    if max(gaps.get(SMALL, [0])) > 0:
        missed.append(f"{SMALL}: not every instance is at its proven total")
    if (mean := fmean(gaps.get(LARGE, [0]))) > MOST_MEAN_GAP:
        missed.append(f"{LARGE}: the mean gap is {mean:.2f} %, allowed {MOST_MEAN_GAP} %")
    below = [name for name, row in gaps.items() if min(row) < 0 and name != "team orienteering"]
    return missed + [f"{name}: below a published or proven total, so a figure is wrong" for name in below]


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("--seconds", type=float, default=10.0)
    parser.add_argument("--family", default="", help="only families with this word")
    options = parser.parse_args()
    main(options.seconds, options.family)

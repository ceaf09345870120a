"""Whether edges ground as the plan says do last the day: knives with drawn lives, worked and learned from day by day.

Bars, ours: the share of days on which every edge was dull with cows still to come stays under the accepted chance, and
does not lie further from what was foreseen than three standard errors. And the curve that was learned lies within three
standard errors of the lives that were drawn, at three places.
"""

from collections.abc import Sequence
from math import exp, sqrt

from tests.bench.visits.worked_knives import SCALE, SHAPE, Knives, WorkedDay, work_days
from visits.domain.kit.edge_curve import edge_curve

SEEDS = (1, 2, 3, 4)
DAYS, LIMIT, DEVIATIONS = 300, 0.1, 3
PLACES = (15, 25, 35)


def main() -> None:
    print("seed   days  ran out  foreseen  ground a day   still sharp at 15, 25, 35 cows (drawn from)")
    worked: list[WorkedDay] = []
    for seed in SEEDS:
        knives, days = work_days(seed, DAYS, LIMIT)
        print(f"{seed:4} {line(days)}   {'  '.join(shares(knives))}")
        check_curve(knives)
        worked += days
    print(f" all {line(worked)}")
    check(worked)


def line(days: Sequence[WorkedDay]) -> str:
    ran_out, foreseen = _share(days)
    ground = sum(day.ground for day in days) / len(days)
    return f"{len(days):6}  {ran_out:7.1%}  {foreseen:8.1%}  {ground:12.2f}"


def shares(knives: Knives) -> list[str]:
    curve = edge_curve(edge for edges in knives.edges().values() for edge in edges)
    steps = [curve.at(place) for place in PLACES]
    return [
        f"{step.survival:.2f} ({drawn(place):.2f})"
        for place, step in zip(PLACES, steps, strict=True)
        if step is not None
    ]


def drawn(cows: float) -> float:
    """The share of the lives drawn that are longer; they are rounded to whole cows."""
    return exp(-(((cows + 0.5) / SCALE) ** SHAPE))


def check(days: Sequence[WorkedDay]) -> None:
    ran_out, foreseen = _share(days)
    assert ran_out <= LIMIT, f"the edges ran out on {ran_out:.1%} of the days, more than {LIMIT:.0%}"
    error = sqrt(foreseen * (1 - foreseen) / len(days))
    assert abs(ran_out - foreseen) <= DEVIATIONS * error, f"foreseen was {foreseen:.1%}, not {ran_out:.1%}"


def check_curve(knives: Knives) -> None:
    curve = edge_curve(edge for edges in knives.edges().values() for edge in edges)
    for place in PLACES:
        step = curve.at(place)
        assert step is not None
        error = sqrt(drawn(place) * (1 - drawn(place)) / step.at_risk)
        assert abs(step.survival - drawn(place)) <= DEVIATIONS * error, f"at {place} cows: {step}"


def _share(days: Sequence[WorkedDay]) -> tuple[float, float]:
    return (
        sum(day.ran_out for day in days) / len(days),
        sum(day.foreseen for day in days) / len(days),
    )

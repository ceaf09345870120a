"""Told hours on the board, against trying every start."""

import json
from datetime import datetime
from math import inf

import pytest

from tests.visits.domain.planning.hand_made import job, monday, shift, week, window
from visits.domain.planning.measures import PER_MINUTE, tick
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.replan.priced_board import MOST_EARLY, PricedBoard, ToldHour


def at(clock):
    return tick(datetime.fromisoformat(monday(clock)))


def told(clock, price=100.0, slack=10):
    return ToldHour(at(clock), slack * PER_MINUTE, price)


def priced(*jobs, told, **changes):
    return PricedBoard(read_problem(json.dumps(week(*jobs, **changes))), told=told)


def test_an_hour_within_the_slack_costs_nothing_and_one_beyond_its_price():
    near = job("a", windows=[window("09:00", "10:00")])
    for clock, price in [("09:00", 0), ("09:10", 0), ("08:50", 0), ("09:11", 100), ("08:49", 100)]:
        made = priced(near, told={0: told(clock)})
        plain = PricedBoard(made.problem)
        assert made.cost(0, (0,)) == pytest.approx(plain.cost(0, (0,)) + price), clock


def test_a_start_well_before_the_told_hour_is_taken_where_waiting_costs_more():
    jobs = [
        job("a", minutes=60, windows=[window("08:00", "17:00")]),
        job("b", minutes=60, windows=[window("09:00", "10:00")]),
    ]
    made = priced(*jobs, told={0: told("14:00", price=50)})
    assert made.starts_of(0, (0, 1)) == [at("08:00"), at("09:00")]


def test_every_choice_of_early_visits_is_weighed():
    """Two told visits, the first kept by waiting, the second before its hour: no run of early ones from the start."""
    jobs = [
        job("a", minutes=30, windows=[window("08:00", "17:00")]),
        job("b", minutes=30, windows=[window("08:00", "11:00")]),
        job("c", minutes=30, windows=[window("10:30", "11:00")]),
    ]
    made = priced(*jobs, told={0: told("09:30", 5000), 1: told("12:00", 100)})
    assert made.starts_of(0, (0, 1, 2)) == [at("09:30"), at("10:00"), at("10:30")]


def by_trying(problem, told, step=30):
    """The least cost of the only order over starts on a grid, waiting anywhere."""
    best = inf
    starts = range(at("07:00"), at("17:30"), step * PER_MINUTE)
    jobs = problem.jobs
    for first in starts:
        for second in starts:
            if second < first + jobs[0].length + problem.travel.times[jobs[0].place][jobs[1].place]:
                continue
            chosen = [first, second]
            if any(
                not any(w.start <= s and s + j.length <= w.end for w in j.windows)
                for j, s in zip(jobs, chosen, strict=True)
            ):
                continue
            leave = first - problem.travel.times[0][jobs[0].place]
            back = second + jobs[1].length + problem.travel.times[jobs[1].place][0]
            if leave < problem.shifts[0].start or back > problem.shifts[0].end:
                continue
            broken = sum(t.price for n, t in told.items() if abs(chosen[n] - t.start) > t.slack)
            best = min(best, (back - leave) / 36_000 * 2400 + broken)
    return best


@pytest.mark.parametrize("first", ["08:00", "09:00", "11:00", "14:00"])
@pytest.mark.parametrize("second", ["08:30", "10:00", "13:00", "16:00"])
@pytest.mark.parametrize("price", [300, 3000])
def test_two_told_hours_cost_what_trying_every_start_finds(first, second, price):
    jobs = [
        job("a", minutes=30, windows=[window("08:00", "12:00"), window("13:00", "17:00")]),
        job("b", minutes=30, windows=[window("08:30", "16:30")]),
    ]
    hours = {0: told(first, price, 0), 1: told(second, price, 0)}
    flat = [shift(cost_per_km=0)]
    problem = week(*jobs, shifts=flat)
    problem["travel"]["minutes"] = [[0 if a == b else 30 for b in range(4)] for a in range(4)]
    made = PricedBoard(read_problem(json.dumps(problem)), told=hours)
    assert made.cost(0, (0, 1)) == pytest.approx(by_trying(made.problem, hours))


def test_a_long_day_of_told_hours_is_still_costed():
    jobs = [job(f"j{n}", minutes=30) for n in range(MOST_EARLY + 2)]
    hours = {n: told("12:00") for n in range(len(jobs))}
    made = priced(*jobs, told=hours)
    order = tuple(range(len(jobs)))
    assert made.cost(0, order) <= PricedBoard(made.problem).cost(0, order) + 100 * len(jobs)
    assert len(made.starts_of(0, order)) == len(jobs)


def test_leaving_out_what_was_planned_is_dearer_by_its_price():
    made = priced(job("a", leave_out_cost=1000), told={})
    made.dropped = {0: 250.0}
    assert made.out_cost(0) == 1250
    with pytest.raises(ValueError, match="mon"):
        priced(job("a", minutes=900), told={}).starts_of(0, (0,))

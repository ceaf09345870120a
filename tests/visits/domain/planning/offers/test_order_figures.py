from math import inf

from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from visits.domain.planning.offers.order_figures import OrderFigures


def figures(problem, order):
    return OrderFigures(board(problem), 0, order)


def test_a_round_as_it_stands_is_summed_up():
    made = figures(week(job("a", cows=4), job("b", "middle", cows=5)), (0, 1))
    assert (made.cows, made.levels, made.metres) == (9, (0, 0), 60_000)
    assert made.work == made.nonstop == 200 * 600
    assert made.money == made.cost == 200 * 40 + 60 * 10


def test_a_shift_that_stays_in_costs_nothing():
    made = figures(week(job("a"), shifts=[shift(cost_fixed=500)]), ())
    assert (made.work, made.money, made.cost, made.late) == (0, 0.0, 0.0, 0)


def test_a_round_that_breaks_a_rule_has_no_price():
    made = figures(week(job("a", windows=[window("07:00", "08:00")])), (0,))
    assert (made.cost, made.timing) == (inf, None)


def test_lateness_is_known_beforehand_unless_midnight_falls_into_the_shift():
    late = {"due": "2026-03-01", "late_cost_per_day": 100}
    by_day = figures(week(job("a", **late)), (0,))
    night = shift(start=monday("20:00"), end="2026-03-03T06:00:00+00:00")
    free = {"start": monday("20:00"), "end": "2026-03-03T06:00:00+00:00"}
    by_night = figures(week(job("a", windows=[free], **late), shifts=[night]), (0,))
    assert (by_day.late, by_night.late) == (100, None)


def test_the_first_and_the_last_moment_at_each_stop_are_known():
    made = figures(week(job("a", "near")), (0,))
    begins, ends, drive, length = made.shift.start, made.shift.end, 12_000, 36_000
    assert made.onward.last_ready(0) == ends - drive - length
    assert made.onward.last_ready(1) == ends
    assert -made.backward.last_ready(0) == begins + drive + length
    assert -made.backward.last_ready(1) == begins

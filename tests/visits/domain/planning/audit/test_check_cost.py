from datetime import date
from fractions import Fraction

from tests.visits.domain.planning.audit.one_run import a_run, a_week, job, shift
from visits.domain.planning.audit.check_cost import check_cost, lateness_cost, run_cost
from visits.domain.planning.audit.plan import Cost, LeftOut, Plan


def test_a_run_costs_its_fixed_sum_its_hours_and_its_km():
    week = a_week(
        job("a"), on=shift(cost_fixed=Fraction(7), cost_per_hour=Fraction(10), cost_per_km=Fraction(1))
    )
    assert run_cost(a_run(week, ("a", 9), leave=8, back=16)) == 7 + 8 * 10 + 40


def test_late_days_cost_and_left_out_jobs_cost():
    late = job("a", due=date(1969, 12, 30), late_cost=Fraction(3))
    week = a_week(late, job("b", leave_out_cost=Fraction(11)))
    run, entry = a_run(week, ("a", 9)), LeftOut("left_out[0]", "b", "no-room")
    assert lateness_cost(week, run) == 6
    right = Cost(Fraction(17), Fraction(0), Fraction(6), Fraction(11))
    assert list(check_cost(week, Plan(right, Fraction(17), (), (entry,)), [run])) == []
    assert list(check_cost(week, Plan(right, Fraction(18), (), (entry,)), [run])) == [
        "bound: 18 is above the cost of this very plan, 17"
    ]

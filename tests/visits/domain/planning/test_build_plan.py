from tests.visits.domain.planning.hand_made import board, job, shift, week
from visits.domain.planning.build_plan import build_plan


def built(proven):
    made = board(
        week(
            job("a", due="2026-03-01", late_cost_per_day=9),
            job("b", leave_out_cost=5),
            shifts=[shift(cost_fixed=1)],
        )
    )
    return build_plan(made, ((0,),), engine="e", seed=4, seconds=1.25, proven=proven)


def test_costs_are_split_into_shifts_lateness_and_what_is_left_out():
    cost = built(False).cost
    assert (round(cost.shifts, 6), cost.lateness, cost.left_out) == (4301, 9, 5)


def test_a_bound_is_given_only_where_the_week_is_proven_best():
    assert built(False).bound is None
    assert built(True).bound == built(True).cost.total


def test_an_unused_shift_is_not_in_the_plan():
    made = board(week(job("a"), shifts=[shift(), shift(id="m2")]))
    assert [
        day.id for day in build_plan(made, ((), (0,)), engine="e", seed=1, seconds=0, proven=False).shifts
    ] == ["m2"]

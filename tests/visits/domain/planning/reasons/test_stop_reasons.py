"""Each figure of a stop's reasons, worked out again by brute force on random weeks."""

from hypothesis import given

from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from tests.visits.domain.planning.reasons.weeks_in_hand import MANY, NEVER, InHand, cost, inserted
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.reasons.stop_reasons import stop_reasons


def reasons_of(in_hand):
    """job -> (shift, order, code -> figures)."""
    where = {each: (at, order) for at, order in enumerate(in_hand.week) for each in order}
    found = dict(stop_reasons(in_hand.board, in_hand.week))
    assert found.keys() == where.keys()
    return {each: (*where[each], {r.code: r.figures for r in reasons}) for each, reasons in found.items()}


def without(order, each):
    return tuple(other for other in order if other != each)


@MANY
@given(small_weeks(most_jobs=4, least_jobs=1))
def test_the_next_best_places_and_what_they_cost_more_are_those_of_trying_everything(problem):
    in_hand = InHand(problem)
    for each, (at, order, said) in reasons_of(in_hand).items():
        rest = without(order, each)
        saved = cost(problem, at, order) - cost(problem, at, rest)
        other_days = [
            cost(problem, day, tried) - cost(problem, day, in_hand.week[day]) - saved
            for day in range(len(in_hand.week))
            for tried in inserted(in_hand.week[day], each)
            if day != at
        ]
        same_day = [cost(problem, at, tried) - cost(problem, at, order) for tried in inserted(rest, each)]
        same_day.pop(order.index(each))
        stays = "fixed" in problem["jobs"][each] or saved == -NEVER
        for code, costs in (("next-best", other_days), ("other-place", same_day)):
            best = NEVER if stays else min(costs, default=NEVER)
            assert (code in said) == (best < NEVER)
            assert code not in said or abs(said[code]["more"] - best) < 0.02


@MANY
@given(small_weeks(most_jobs=4, least_jobs=1))
def test_the_detour_and_the_worth_are_the_shift_with_and_without_the_stop(problem):
    for each, (at, order, said) in reasons_of(InHand(problem)).items():
        rest = without(order, each)
        saved = cost(problem, at, order) - cost(problem, at, rest)
        (code,) = {"detour", "alone"} & said.keys() or {None}
        assert (code is None) == (cost(problem, at, rest) == NEVER)
        assert code is None or (code == "alone") == (not rest)
        assert code is None or abs(said[code]["money"] - saved) < 0.02
        asked = problem["jobs"][each]
        if "worth-doing" in said:
            assert "fixed" not in asked
            assert said["worth-doing"]["leave_out"] == asked["leave_out_cost"]
            assert abs(said["worth-doing"]["money"] - saved) < 0.02
            assert saved <= asked["leave_out_cost"] + 0.02
        else:
            assert "fixed" in asked or "leave_out_cost" not in asked or saved == -NEVER


def codes(problem, each=0):
    made = InHand(problem)
    return {r.code: r.figures for r in dict(stop_reasons(made.board, made.week))[each]}


def test_the_parts_of_a_detour_are_those_of_the_drawing():
    said = codes(week(job("a", "middle"), job("b", "far", fixed={"shift": "mon", "start": monday("12:00")})))
    # alone b takes 60 + 60 + 60 minutes; with a on the way the drives stay 120
    assert said["detour"] == {"km": 0, "drive_minutes": 0, "free_minutes": 0, "money": 60 * 40}
    held = codes(
        week(
            job("a", "near", windows=[window("09:00", "10:00")]),
            job("b", "near", windows=[window("10:30", "11:30")]),
        )
    )
    assert held["detour"] == {"km": 0, "drive_minutes": 0, "free_minutes": 30, "money": 90 * 40}


def test_a_promise_is_said_and_no_other_place_is():
    said = codes(
        week(job("a", fixed={"shift": "mon", "start": monday("09:00")}), shifts=[shift(), shift(id="b")])
    )
    assert said["promised"] == {"start": monday("09:00")}
    assert not said.keys() & {"next-best", "other-place", "only-shift", "as-it-opens", "worth-doing"}


def test_open_hours_are_the_reason_only_where_they_are_touched():
    assert codes(week(job("a", windows=[window("09:00", "10:00")]))).keys() >= {"as-it-closes"}
    assert "as-it-opens" not in codes(week(job("a", windows=[window("09:00", "10:30")])))
    waits = week(job("a", windows=[window("07:00", "08:20")]), job("b", windows=[window("09:00", "12:00")]))
    assert codes(waits, 1)["as-it-opens"] == {"start": monday("09:00")}
    assert "as-it-closes" not in codes(waits, 1)


def test_a_day_that_cannot_be_done_has_no_reasons():
    made = board(week(job("a", windows=[window("07:00", "07:30")])))
    assert list(stop_reasons(made, ((0,),))) == []

from tests.visits.domain.planning.hand_made import board, job, matrix, monday, week, window
from visits.domain.planning.left_out import left_out


def why(problem, orders, at):
    found = left_out(board(problem), orders, at)
    return found.reason, found.detail


def test_a_promise_names_the_promise_in_its_way():
    kept = [
        job(name, fixed={"shift": "mon", "start": monday(clock)})
        for name, clock in (("a", "09:00"), ("b", "09:30"))
    ]
    reason, detail = why(week(*kept), ((0,),), 1)
    assert reason == "fixed-clash"
    assert detail.endswith("promised to a.")


def test_a_price_is_the_reason_only_where_there_is_a_spot():
    full = job("a", windows=[window("09:00", "10:00")])
    other = job("b", windows=[window("09:00", "10:00")], leave_out_cost=1)
    assert why(week(full, other), ((0,),), 1)[0] == "no-room"
    assert why(week(full, other), ((),), 1)[0] == "not-worth-it"


def test_hygiene_is_the_reason_only_where_it_would_fit_without_it():
    first = job("a", "near", windows=[window("07:00", "08:30")])
    late = job("b", "far", windows=[window("09:00", "12:00")])
    assert why(week(first, late, hygiene={"near": 1}), ((0,),), 1)[0] == "hygiene-clash"
    short = job("b", "far", windows=[window("07:00", "08:30")])
    assert why(week(first, short, hygiene={"near": 1}), ((0,),), 1)[0] == "no-room"


def test_a_job_that_only_fits_behind_another_is_not_called_impossible():
    table = matrix()
    table["minutes"][0] = [0, 20, 40, 700]
    near, far = job("a"), job("b", "far", leave_out_cost=1)
    assert why(week(near, far, travel=table), ((0,),), 1)[0] == "not-worth-it"

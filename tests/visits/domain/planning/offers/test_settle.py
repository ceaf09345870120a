from tests.visits.domain.planning.hand_made import board, job, week, window
from visits.domain.planning.offers.offer import Place
from visits.domain.planning.offers.settle import settle


def clock(board_of, ticks):
    since = ticks - (board_of.problem.shifts[0].start - 7 * 36_000)
    return f"{since // 36_000:02}:{since % 36_000 // 600:02}"


def hour(board_of, text):
    return board_of.problem.shifts[0].start + (int(text[:2]) - 7) * 36_000 + int(text[3:]) * 600


def settled(made, order, spans, stood):
    found = settle(
        made,
        Place(0, 0, order),
        {each: (hour(made, a), hour(made, b)) for each, (a, b) in spans.items()},
        {each: hour(made, text) for each, text in stood.items()},
    )
    return found and {stop.job: clock(made, stop.start) for stop in found.stops}


def test_nobody_elses_hour_changes_where_that_can_be():
    made = board(week(job("a"), job("b", "middle"), job("new")))
    hours = settled(made, (0, 2, 1), {2: ("08:00", "17:00")}, {0: "09:00", 1: "13:00"})
    assert (hours["a"], hours["b"]) == ("09:00", "13:00")
    assert "10:00" <= hours["new"] <= "11:40"


def test_only_those_in_the_way_get_another_hour():
    made = board(week(job("a"), job("b", "middle"), job("new", windows=[window("09:30", "11:30")])))
    hours = settled(made, (0, 2, 1), {2: ("10:30", "10:30")}, {0: "09:00", 1: "10:20"})
    assert hours == {"a": "09:00", "new": "10:30", "b": "11:50"}


def test_a_span_that_cannot_be_kept_is_refused():
    made = board(week(job("a"), job("new")))
    assert settled(made, (0, 1), {1: ("07:20", "08:00")}, {0: "07:20"}) is None

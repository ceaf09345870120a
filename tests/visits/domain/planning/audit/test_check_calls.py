from tests.visits.domain.planning.audit.one_run import Fixed, a_run, a_week, clock, job
from visits.domain.planning.audit.check_calls import check_calls
from visits.domain.planning.audit.week import Window


def test_work_in_one_window_by_an_allowed_crew_has_no_breach():
    week = a_week(job("a", crews=frozenset({"ann"}), fixed=Fixed("s", clock(9))))
    assert list(check_calls(week, a_run(week, ("a", 9)))) == []


def test_two_windows_that_touch_do_not_make_one():
    halves = (Window(clock(8), clock(9.5)), Window(clock(9.5), clock(11)))
    week = a_week(job("a", windows=halves))
    assert list(check_calls(week, a_run(week, ("a", 9)))) == [
        "stops[0].start: the work is not whole inside one window of a"
    ]


def test_a_drive_cut_short_by_more_than_a_tenth_of_a_second_is_a_breach():
    week = a_week(job("a"))
    assert list(check_calls(week, a_run(week, ("a", 8.5)))) == []
    assert len(list(check_calls(week, a_run(week, ("a", 8.5 - 0.2 / 3600))))) == 1

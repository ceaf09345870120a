from tests.visits.domain.planning.audit.one_run import a_run, a_week, clock, job, shift
from visits.domain.planning.audit.check_span import check_span


def test_a_run_within_its_limits_has_no_breach():
    week = a_week(job("a"), on=shift(max_work=clock(8), max_cows=5))
    assert list(check_span(a_run(week, ("a", 9)))) == []


def test_each_limit_has_its_breach():
    week = a_week(
        job("a"), job("b"), on=shift(start=clock(8.5), end=clock(15), max_work=clock(7), max_cows=9)
    )
    places = [line.split(":")[0] for line in check_span(a_run(week, ("a", 9), ("b", 15)))]
    assert places == ["run.leave", "run.return", "run.return", "run.stops", "run.return"]

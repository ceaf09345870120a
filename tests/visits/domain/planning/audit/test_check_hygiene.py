from tests.visits.domain.planning.audit.one_run import a_run, a_week, job
from visits.domain.planning.audit.check_hygiene import check_hygiene


def test_hygiene_may_rise_but_not_fall():
    week = a_week(job("a"), job("b", "high"))
    assert list(check_hygiene(week, a_run(week, ("a", 9), ("b", 11)))) == []
    assert list(check_hygiene(week, a_run(week, ("b", 9), ("a", 11)))) == [
        "stops[1].job: hygiene 0 comes after b with 2"
    ]

from fractions import Fraction

from tests.visits.domain.planning.audit.one_run import a_week, job, told
from visits.domain.planning.audit.check_lists import check_lists
from visits.domain.planning.audit.plan import Cost, LeftOut, Plan

NOTHING = Cost(*[Fraction(0)] * 4)


def test_each_job_is_named_once():
    plan = Plan(NOTHING, None, (told(("a", 9)),), (LeftOut("left_out[0]", "b", "no-room"),))
    assert list(check_lists(a_week(job("a"), job("b")), plan)) == []
    assert list(check_lists(a_week(job("a"), job("b"), job("c")), plan)) == [
        "left_out: c is neither planned nor left out"
    ]
    assert list(check_lists(a_week(job("a")), plan)) == ["left_out[0].job: there is no job b"]

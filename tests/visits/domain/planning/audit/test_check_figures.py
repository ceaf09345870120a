from dataclasses import replace
from fractions import Fraction

from tests.visits.domain.planning.audit.one_run import a_run, a_week, job, told
from visits.domain.planning.audit.check_figures import check_figures


def test_right_figures_have_no_breach_and_wrong_ones_have_one_each():
    week, stops = a_week(job("a"), job("b", "high")), (("a", 9), ("b", 11))
    run, right = a_run(week, *stops), told(*stops)
    assert list(check_figures(week, run, right)) == []
    wrong = replace(right, work=right.work + 100_001, metres=Fraction(60_002), cows=11)
    assert len(list(check_figures(week, run, wrong))) == 3

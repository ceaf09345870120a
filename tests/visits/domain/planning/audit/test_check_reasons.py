from fractions import Fraction

import pytest

from tests.visits.domain.planning.audit.one_run import a_run, a_week, job
from visits.domain.planning.audit.check_reasons import check_reasons
from visits.domain.planning.audit.plan import Cost, LeftOut, Plan

NOTHING = Cost(*[Fraction(0)] * 4)
REASONS = (
    "no-crew no-window-in-any-shift too-long-for-any-window fixed-clash hygiene-clash not-worth-it no-room"
)


@pytest.mark.parametrize("reason", REASONS.split())
def test_no_reason_is_true_for_a_job_that_fits_for_nothing(reason):
    week = a_week(job("a"), job("b", leave_out_cost=Fraction(5)))
    plan = Plan(NOTHING, None, (), (LeftOut("left_out[0]", "b", reason),))
    (line,) = check_reasons(week, plan, [a_run(week, ("a", 9))])
    assert line.startswith("left_out[0].reason: is not true, ")

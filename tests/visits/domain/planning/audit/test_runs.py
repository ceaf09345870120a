from tests.visits.domain.planning.audit.one_run import a_run, a_week, clock, job, told
from visits.domain.planning.audit.runs import lay_out


def test_a_run_knows_its_drives_and_when_somebody_is_busy():
    run = a_run(a_week(job("a"), job("b")), ("a", 9), ("b", 11), back=12.5)
    assert [call.leg.time for call in run.calls] == [clock(0.5), 0]
    assert (run.metres, run.cows) == (40_000, 10)
    assert (clock(12), clock(12.5)) in run.busy()


def test_a_shift_with_an_unknown_job_or_no_stop_is_not_laid_out():
    assert lay_out(a_week(job("a")), told(("z", 9))) is None
    assert lay_out(a_week(job("a")), told()) is None

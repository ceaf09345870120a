import logging

import pytest

from trimops.watch.figures import JOB_TIME, JOBS, JobOutcome
from trimops.watch.job_lines import job_logged
from trimops.watch.marks import marks


def tries(outcome):
    return JOBS.labels("tests.job", outcome)._value.get()


def test_each_line_of_a_job_bears_its_name_and_number_and_the_last_says_how_it_ended(caplog):
    caplog.set_level(logging.INFO, logger="trimops.watch.job_lines")
    before = tries("done"), JOB_TIME.labels("tests.job")._sum.get()
    with job_logged("tests.job", 7):
        assert marks() == {"job": "tests.job", "job_id": "7"}
    (line,) = caplog.records
    assert line.told["outcome"] == "done"
    assert line.told["ms"] >= 0
    assert tries("done") == before[0] + 1
    assert JOB_TIME.labels("tests.job")._sum.get() > before[1]


def test_a_job_that_breaks_counts_as_failed_and_what_it_raised_goes_on(caplog):
    caplog.set_level(logging.INFO, logger="trimops.watch.job_lines")
    before = tries("failed")
    with pytest.raises(ZeroDivisionError), job_logged("tests.job", "8"):
        _ = 1 / 0
    assert caplog.records[-1].told["outcome"] == "failed"
    assert tries("failed") == before + 1
    assert marks() == {}


def test_whoever_catches_the_fault_says_how_it_ended(caplog):
    caplog.set_level(logging.INFO, logger="trimops.watch.job_lines")
    before = tries("given_up")
    with job_logged("tests.job", 9) as run:
        run.outcome = JobOutcome.GIVEN_UP
    assert caplog.records[-1].told["outcome"] == "given_up"
    assert tries("given_up") == before + 1

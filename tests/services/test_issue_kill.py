"""Processes that issue are killed at random on a real PostgreSQL: no gap, no double, no invoice without its papers.

`make bench` runs it in full (tests/bench/invoicing/bench_issue_kills.py): TRIMOPS_ISSUES invoices, TRIMOPS_KILLS kills.
"""

import os

import pytest

from tests.bench.invoicing.finished_visits import finished_visits
from tests.services.issue_under_kills import Trial, faults_of, issue_under_kills

pytestmark = pytest.mark.services
ISSUES, KILLS = int(os.environ.get("TRIMOPS_ISSUES", "24")), int(os.environ.get("TRIMOPS_KILLS", "4"))
IS_FULL = ISSUES >= 1000


def test_processes_killed_while_they_issue_leave_whole_books(transactional_db):
    house, visits = finished_visits(ISSUES)
    trial = Trial(processes=4 if IS_FULL else 3, kills=KILLS, between=1.5 if IS_FULL else 0.4)
    done = issue_under_kills(house, visits, trial)
    print(f"  {ISSUES} issued by {trial.processes} processes, {done.killed} killed, {done.seconds:.0f} s")
    assert done.killed == KILLS
    assert faults_of(house, visits) == []

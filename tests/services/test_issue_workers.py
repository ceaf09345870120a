"""A month's drafts are issued by Celery workers: each once, however often a job runs.

`make bench` measures a thousand (tests/bench/invoicing/bench_issue_workers.py): TRIMOPS_RUN invoices.
"""

import os
import time

import pytest
from django.db import connection, transaction
from django.utils import timezone

from invoicing.models import Invoice
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.issue_run import start_issue_run
from tests.bench.invoicing.finished_visits import finished_visits
from tests.services.issue_under_kills import faults_of
from tests.services.worker import worker
from trimops.celery import app
from visits.models import Visit

pytestmark = pytest.mark.services
RUN = int(os.environ.get("TRIMOPS_RUN", "5"))
PROCESSES = [1, 2] if RUN >= 100 else [2]
SECONDS_EACH = 6


def drafts_of(house, visits):
    rows = Visit.objects.within(house.scope).filter(pk__in=visits).select_related("business").order_by("pk")
    return [draft_invoice(visit=row, at=timezone.now()) for row in rows]


def seconds_of_run(house, drafts, processes, folder):
    """From asking the workers until the last invoice is there."""
    ids = [draft.pk for draft in drafts]
    with worker(app, folder / f"worker-{processes}.log", processes=processes):
        began = time.monotonic()
        with transaction.atomic():
            # Twice: a job may come twice, and does its work once.
            for times in (drafts, drafts[:2]):
                start_issue_run(invoices=times, by=house.office)
        while Invoice.objects.within(house.scope).drafts().filter(pk__in=ids).exists():
            assert time.monotonic() - began < 60 + SECONDS_EACH * len(ids), "waited in vain"
            time.sleep(0.1)
        return time.monotonic() - began


def test_a_run_through_workers_issues_each_draft_once(transactional_db, tmp_path):
    house, visits = finished_visits(RUN * len(PROCESSES))
    rates = {}
    for turn, processes in enumerate(PROCESSES):
        drafts = drafts_of(house, visits[turn * RUN : (turn + 1) * RUN])
        rates[processes] = RUN / seconds_of_run(house, drafts, processes, tmp_path)
        print(f"  {RUN} invoices, {processes} workers, {connection.vendor}: {rates[processes]:.1f} a second")
    if len(rates) == 2:
        print(f"  two workers to one: {rates[2] / rates[1]:.2f}")
    assert faults_of(house, visits) == []

"""What follows a sign-off is done once, also where each of its jobs runs twice at the same moment in two workers."""

import threading

import pytest
from django.db import connection

from invoicing.models import BilledWork, Invoice
from invoicing.tasks import draft_invoice_task
from tests.factories import blocked_foot, finish, make_house, make_prices, put_down, under_way
from trimops.errands.models import Errand
from trimops.jobs import Job
from visits.models import IssuedReport, Recheck, Visit
from visits.tasks import book_rechecks_task, issue_report_task

pytestmark = pytest.mark.services
TIMES = 3


@pytest.fixture
def signed_off(transactional_db, left_at_broker):
    """A visit with a block on a foot, signed off; its errands lie at a broker that nobody listens to."""
    house = make_house()
    make_prices(house.business)
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, blocked_foot())
    return house, finish(visit, house.trimmer)


def at_once(tasks, visit):
    """Each of the tasks in two threads of its own, all let go together; what they raised."""
    start, faults = threading.Barrier(2 * len(tasks)), []

    def run(task):
        start.wait(20)
        try:
            task(visit.pk)
        except Exception as fault:
            faults.append(repr(fault))
        finally:
            connection.close()

    threads = [threading.Thread(target=run, args=(task,)) for task in tasks for _ in range(2)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(60)
    return faults


def test_the_report_the_draft_and_the_re_checks_are_there_once(signed_off):
    house, visit = signed_off
    jobs = (Job.BOOK_RECHECKS, Job.DRAFT_INVOICE, Job.ISSUE_REPORT)
    asked = Errand.objects.within(house.scope)
    assert set(asked.filter(job__in=jobs).values_list("job", "state")) == {
        (job.value, "waiting") for job in jobs
    }
    for _ in range(TIMES):
        assert at_once([book_rechecks_task, draft_invoice_task, issue_report_task], visit) == []
    assert IssuedReport.objects.within(house.scope).count() == 1
    assert asked.filter(job=Job.TELL_REPORT).count() == 1
    assert Invoice.objects.within(house.scope).count() == 1
    keys = list(BilledWork.objects.within(house.scope).values_list("key", flat=True))
    assert len(keys) == len(set(keys)) > 0
    recheck = Recheck.objects.within(house.scope).get()
    (booked,) = Visit.objects.within(house.scope).exclude(pk=visit.pk)
    assert recheck.visit == booked

"""The night of many businesses: begun by the timetable, done by workers; its round trips do not grow with the others.

`make bench` runs it with a thousand (tests/bench/visits/bench_nightly.py): TRIMOPS_BUSINESSES. It prints how many
businesses a second one and two worker processes get through; only what hangs on no machine is asserted.
"""

import os
import time
from collections import Counter
from datetime import timedelta

import pytest
from django.conf import settings
from django.db import connection
from django.test.utils import CaptureQueriesContext
from django.utils import timezone

from tests.bench.visits.many_businesses import FARMS, many_businesses
from tests.emptied_tables import empty_tables
from tests.services.worker import worker
from trimops.celery import app
from trimops.errands.domain.errand_states import ErrandState
from trimops.errands.models import Errand
from trimops.errands.services import begin_daily as beginning
from trimops.errands.services.run_errand import run_errand
from trimops.errands.services.tick import tick
from trimops.jobs import DAILY, Job
from trimops.kernel.scope import Scope
from trimops.tenancy.unscoped import unscoped
from visits.models import Visit

pytestmark = pytest.mark.services
BUSINESSES = int(os.environ.get("TRIMOPS_BUSINESSES", "12"))
IS_FULL = BUSINESSES >= 100
TRIALS = [(BUSINESSES // 10, 1), (BUSINESSES, 1), (BUSINESSES, 2)] if IS_FULL else [(BUSINESSES, 2)]
SWEEP = Job.SWEEP_RECHECKS


@pytest.fixture
def only_the_sweep(monkeypatch):
    monkeypatch.setattr(beginning, "DAILY", {SWEEP: DAILY[SWEEP]})


def left(done=False):
    with unscoped("a test counts"):
        rows = Errand.objects.filter(job=SWEEP.value)
        return (rows.filter(state="done") if done else rows.exclude(state="done")).count()


def wanted():
    with unscoped("a test counts"):
        return Counter(Visit.objects.filter(state="wanted").values_list("business_id", flat=True))


def seconds_of_night(count, processes, folder):
    """From the first tick until the last business is swept, in a fresh database of `count`."""
    with worker(app, folder / f"{count}-{processes}.log", processes=processes):
        began = time.monotonic()
        tick(now=timezone.now())
        while left() or not left(done=True):
            assert time.monotonic() - began < 60 + 2 * count, "waited in vain"
            time.sleep(0.2)
            tick(now=timezone.now())
        return time.monotonic() - began


@pytest.mark.parametrize(("count", "processes"), TRIALS)
def test_every_business_is_swept_in_its_night(
    count, processes, transactional_db, left_at_broker, only_the_sweep, tmp_path
):
    keys = many_businesses(count)
    seconds = seconds_of_night(count, processes, tmp_path)
    rate = count / seconds
    print(f"  {count} businesses, {processes} processes: {seconds:.1f} s, {rate:.1f} a second", flush=True)
    # One visit for the re-check, one routine visit for each farm that has fallen due; the same in each business.
    assert set(wanted()) == set(keys)
    assert len(set(wanted().values())) == 1
    assert left(done=True) == count


def round_trips(keys):
    """Statements that begin, do and end the sweep of the last of these businesses, and those of a tick that finds
    nothing to do."""
    assert not settings.DATABASES["default"]["ENGINE"].endswith("sqlite3")
    scope = Scope(keys[-1])
    errand = Errand.objects.within(scope).get(job=SWEEP.value)
    with CaptureQueriesContext(connection) as of_sweep:
        assert run_errand(errand_id=errand.pk) is ErrandState.DONE
    with unscoped("a test writes"):
        Errand.objects.update(state="done")
    with CaptureQueriesContext(connection) as of_tick:
        tick(now=timezone.now())
    return len(of_sweep), len(of_tick)


def test_the_round_trips_of_one_business_and_of_a_tick_are_the_same_among_few_and_among_many(
    transactional_db, left_at_broker, only_the_sweep
):
    counted = {}
    for count in (2, 40):
        empty_tables()
        keys = many_businesses(count)
        tick(now=timezone.now() + timedelta(seconds=5))
        counted[count] = round_trips(keys)
    print(
        f"  round trips: {counted[2][0]} for a business with {FARMS} farms, {counted[2][1]} for an idle tick"
    )
    assert counted[2] == counted[40]

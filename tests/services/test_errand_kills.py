"""Real workers on a real PostgreSQL and a real broker, killed, cut off and robbed of their messages in the middle of an
errand: in the end everything is done, once in effect."""

import os
import signal
import time
from datetime import timedelta
from itertools import pairwise
from pathlib import Path

import pytest
from django.db import connection
from django.utils import timezone

from tests.factories import make_business
from tests.services.test_job_worker import wait_for
from tests.services.trial.jobs import ALONE, PLAIN, SHORT, TABLE
from tests.services.worker import worker
from tests.trimops.errands.errand_hands import now_of
from trimops.celery import app
from trimops.errands.services.enqueue import enqueue
from trimops.errands.services.tick import tick

pytestmark = pytest.mark.services
LATER = timedelta(seconds=15)
"""The timetable of the tests runs so far ahead: what is looked for after ten seconds is found at once."""


class Trial:
    """A business, a log of what workers began and ended, and a table of what was done."""

    def __init__(self, folder: Path) -> None:
        self.log, self.folder, self.business = folder / "trial.log", folder, make_business()
        self.log.touch()
        with connection.cursor() as cursor:
            cursor.execute(TABLE)
            cursor.execute("TRUNCATE trial_done")

    def worker(self, name="worker", processes=1):
        told = {"TRIAL_LOG": str(self.log), "DJANGO_SETTINGS_MODULE": "tests.services.trial.settings"}
        return worker(app, self.folder / f"{name}.log", processes=processes, **told)

    def ask(self, job=PLAIN, number=1, **ids):
        return enqueue(job, self.business.pk, number=number, **{"millis": 300, **ids})

    def lines(self, word):
        """(number, seconds, process) of each."""
        told = (line.split() for line in self.log.read_text().splitlines() if line.startswith(word))
        return [(int(number), float(at), int(process)) for _, number, at, process in told]

    def done(self):
        with connection.cursor() as cursor:
            cursor.execute("SELECT number FROM trial_done ORDER BY number")
            return [number for (number,) in cursor.fetchall()]

    def wait_until_done(self, *errands, seconds=40):
        """With a timetable that ticks meanwhile."""

        def are_done():
            tick(now=timezone.now() + LATER)
            return all(now_of(errand).state == "done" for errand in errands)

        wait_for(are_done, seconds)


@pytest.fixture
def trial(transactional_db, left_at_broker, tmp_path):
    trial = Trial(tmp_path)
    yield trial
    with connection.cursor() as cursor:
        cursor.execute("DROP TABLE trial_done")


def test_a_worker_whose_child_is_killed_does_the_errand_anew_at_once(trial):
    with trial.worker():
        errand = trial.ask(millis=2500)
        wait_for(lambda: trial.lines("begin"))
        killed = time.monotonic()
        os.kill(trial.lines("begin")[0][2], signal.SIGKILL)
        # Nobody ticks here: the broker has it back as soon as the worker sees that its child is gone.
        wait_for(lambda: now_of(errand).state == "done")
        print(f"  child killed: done {time.monotonic() - killed:.1f} s later, 2.5 s of them at work")
    assert (trial.done(), len(trial.lines("begin")), len(trial.lines("end"))) == ([1], 2, 1)
    assert now_of(errand).tries == 2


def test_a_whole_worker_that_is_killed_leaves_its_errand_to_the_next(trial):
    with trial.worker() as first:
        errand = trial.ask(millis=20_000)
        wait_for(lambda: trial.lines("begin"))
        os.killpg(first.process_id, signal.SIGKILL)
    assert now_of(errand).state == "under_way"
    with trial.worker("second"):
        # The second of them is asked to wait less; the row says the same for both, so it is told anew.
        type(errand).objects.within(errand.scope).filter(pk=errand.pk).update(ids={"number": 1, "millis": 10})
        trial.wait_until_done(errand)
    assert (trial.done(), len(trial.lines("begin"))) == ([1], 2)


def test_what_the_broker_forgot_is_handed_out_again(trial, left_at_broker):
    errands = [trial.ask(number=number, millis=10) for number in range(3)]
    assert left_at_broker.llen("prompt") == 3
    left_at_broker.flushall()
    with trial.worker():
        trial.wait_until_done(*errands)
    assert (trial.done(), len(trial.lines("begin"))) == ([0, 1, 2], 3)


def test_a_database_that_cuts_every_line_costs_a_try_and_not_the_errand(trial):
    with trial.worker():
        errand = trial.ask(millis=1500)
        wait_for(lambda: trial.lines("begin"))
        with connection.cursor() as cursor:
            mine = "pid <> pg_backend_pid() AND datname = current_database()"
            cursor.execute(f"SELECT count(pg_terminate_backend(pid)) FROM pg_stat_activity WHERE {mine}")
            assert cursor.fetchone()[0] > 0
        wait_for(lambda: now_of(errand).last_words)
        row = now_of(errand)
        assert (row.state, row.tries, "Error" in row.last_words) == ("waiting", 1, True)
        trial.wait_until_done(errand)
    assert trial.done() == [1]


def test_a_stop_that_is_heard_is_a_failure_and_one_that_is_not_ends_the_process(trial):
    with trial.worker(processes=2):
        heard, deaf = trial.ask(SHORT, 1, millis=20_000), trial.ask(SHORT, 2, millis=20_000, deaf=1)
        wait_for(lambda: "SoftTimeLimitExceeded" in now_of(heard).last_words)
        wait_for(lambda: "Hard time limit" in (trial.folder / "worker.log").read_text())
        assert now_of(deaf).state == "under_way"
        for errand in (heard, deaf):
            type(errand).objects.within(errand.scope).filter(pk=errand.pk).update(
                ids={**errand.ids, "millis": 10}
            )
        trial.wait_until_done(heard, deaf)
    assert trial.done() == [1, 2]


def test_those_that_must_not_meet_never_do_and_others_do(trial):
    with trial.worker(processes=2):
        together = [trial.ask(PLAIN, number, millis=600) for number in (1, 2)]
        wait_for(lambda: all(now_of(errand).state == "done" for errand in together))
        assert _overlaps(trial, {1, 2})
        apart = [trial.ask(ALONE, number, millis=400) for number in (11, 12, 13)]
        trial.wait_until_done(*apart)
    assert not _overlaps(trial, {11, 12, 13})
    assert trial.done() == [1, 2, 11, 12, 13]


def _overlaps(trial, numbers):
    """Whether two of them were at work at one moment, by the machine's own clock."""
    begins = {number: at for number, at, _ in trial.lines("begin") if number in numbers}
    ends = {number: at for number, at, _ in trial.lines("end") if number in numbers}
    spans = sorted((begins[number], ends[number]) for number in numbers)
    return any(later[0] < earlier[1] for earlier, later in pairwise(spans))

"""Where an errand goes: this process, a process of its own, or the broker, which may be away."""

import logging
import sys
import time
from datetime import date

import pytest
from celery import Celery

from tests.factories import make_business
from tests.trimops.errands.errand_hands import all_errands, now_of, set_work, written
from trimops.celery import app
from trimops.errands import kinds
from trimops.errands.kinds import KINDS, ErrandKind
from trimops.errands.models import Errand
from trimops.errands.services import hand_out as handing
from trimops.errands.services.enqueue import enqueue
from trimops.errands.services.hand_out import hand_out
from trimops.errands.services.tick import IN_QUEUE
from trimops.jobs import QUEUES, Job, queue_of

pytestmark = pytest.mark.django_db(transaction=True)


@pytest.fixture
def apart(settings, monkeypatch, tmp_path):
    """A stand-in for Python that does what `apart.does` says; what waits for it waits until it is told to."""
    settings.JOBS_RUN_APART = True
    stand_in = tmp_path / "python"
    monkeypatch.setattr(sys, "executable", str(stand_in))
    waits = []
    monkeypatch.setattr(handing.threading.Thread, "start", lambda thread: waits.append(thread))

    def does(line):
        stand_in.write_text(f"#!/bin/sh\n{line}\n")
        stand_in.chmod(0o755)
        return waits

    return does


def test_a_long_one_gets_a_process_of_its_own_whose_failure_is_logged(apart, caplog, tmp_path):
    waits = apart(f'echo "$@" > {tmp_path / "called"}\nexit 3')
    errand = enqueue(Job.PLAN_WEEK, make_business().pk, week_plan_id=5)
    with caplog.at_level(logging.ERROR):
        waits[0].run()
    assert (tmp_path / "called").read_text().split() == ["-m", "django", "run_errand", str(errand.pk)]
    assert f"errand {errand.pk}: its process ended with 3" in caplog.text


def test_one_that_takes_too_long_is_ended_by_force(apart, caplog, monkeypatch):
    waits = apart("exec sleep 60")
    monkeypatch.setattr(handing, "EXTRA_SECONDS", 0)
    monkeypatch.setitem(kinds.KINDS, Job.PLAN_WEEK, ErrandKind(lambda **ids: None, 0, ""))
    enqueue(Job.PLAN_WEEK, make_business().pk, week_plan_id=5)
    began = time.monotonic()
    waits[0].run()
    assert time.monotonic() - began < 10
    assert "its process ended with -9" in caplog.text


def test_an_unknown_job_costs_the_caller_nothing(caplog):
    hand_out(job="visits.of_tomorrow", errand_id=1)
    assert "not started: visits.of_tomorrow, errand 1" in caplog.text


@pytest.fixture
def broker_away(settings, monkeypatch):
    """Port 1 refuses: a real client at a broker that nobody runs."""
    settings.REDIS_URL = "redis://127.0.0.1:1/0"
    away = Celery("away", broker=settings.REDIS_URL)
    away.conf.broker_connection_timeout = 1
    monkeypatch.setattr(handing, "_broker_away_until", 0.0)
    yield
    app.set_current()


def test_a_broker_that_is_away_costs_neither_the_page_nor_the_errand(broker_away, caplog, monkeypatch):
    calls = set_work(monkeypatch, lambda time: None)
    errand = enqueue(Job.DRAFT_INVOICE, make_business().pk, visit_id=7)
    assert "not started: invoicing.draft_invoice, errand" in caplog.text
    row = now_of(errand)
    assert (row.state, row.handed_out_at, calls) == ("waiting", None, [])


def test_a_page_with_many_waits_for_an_absent_broker_once(broker_away, caplog):
    business = make_business()
    began = time.monotonic()
    for visit in range(20):
        enqueue(Job.DRAFT_INVOICE, business.pk, visit_id=visit)
    assert time.monotonic() - began < 5
    assert caplog.text.count("not started") == 1
    assert {row.handed_out_at for row in all_errands()} == {None}


@pytest.fixture
def broker_of_memory(settings, monkeypatch):
    """Carries what it is given and nobody fetches it."""
    settings.REDIS_URL = "memory://"
    carried = Celery("of memory", broker="memory://")
    carried.conf.task_default_queue = "prompt"
    monkeypatch.setattr(handing, "_broker_away_until", 0.0)
    with carried.connection_for_read() as line:

        def waits_in(queue):
            box = line.SimpleQueue(queue)
            waiting = box.qsize()
            box.clear()
            return waiting

        yield waits_in
    app.set_current()


@pytest.mark.parametrize(
    ("job", "is_daily", "queue"),
    [
        (Job.LOOK_AT_WATCH, False, "urgent"),
        (Job.SEND_ALARM, False, "urgent"),
        (Job.SEND_OUTGOING, False, "prompt"),
        (Job.PLAN_WEEK, False, "long"),
        (Job.PROVE_WEEK, False, "long"),
        (Job.SWEEP_RECHECKS, True, "daily"),
    ],
)
def test_nothing_urgent_stands_behind_plans_or_mails(broker_of_memory, job, is_daily, queue):
    hand_out(job=job.value, errand_id=1, is_daily=is_daily)
    waiting = {each: broker_of_memory(each) for each in QUEUES}
    assert waiting == dict.fromkeys(QUEUES, 0) | {queue: 1}


def test_what_the_tick_looks_for_in_a_queue_is_what_is_dealt_to_it():
    business = make_business()
    for job in KINDS:
        for day in (None, date(2026, 7, 1)):
            row = written(business, job=job, day=day)
            found = [
                each
                for each, there in IN_QUEUE.items()
                if Errand.objects.within(row.scope).filter(there, pk=row.pk)
            ]
            assert found == [queue_of(job.value, is_daily=day is not None)], job


def test_what_waits_beside_behind_a_slow_server_waits_there_once(settings, monkeypatch):
    class Shelf:
        """Of what is to be done beside, nothing is."""

        def __init__(self):
            self.held = []

        def submit(self, work, number):
            self.held.append((work, number))

    shelf, alarms = Shelf(), Shelf()
    settings.JOBS_RUN_APART = True
    monkeypatch.setattr(handing, "BESIDE", shelf)
    monkeypatch.setattr(handing, "ALARMS_BESIDE", alarms)
    monkeypatch.setattr(handing, "_waits_beside", set())
    for _ in range(5):
        for number in (901, 902):
            hand_out(job=Job.SEND_OUTGOING.value, errand_id=number)
    assert [number for _, number in shelf.held] == [901, 902]
    work, number = shelf.held[0]
    work(number)
    hand_out(job=Job.SEND_OUTGOING.value, errand_id=901)
    assert [number for _, number in shelf.held] == [901, 902, 901], "what was begun may wait anew"
    hand_out(job=Job.SEND_ALARM.value, errand_id=903)
    assert [number for _, number in alarms.held] == [903], "an alarm waits behind no mail"

"""An errand: done once, tried again when it fails, taken over when whoever had it died."""

import logging
from datetime import timedelta
from functools import partial

import pytest
from django.db import DatabaseError, connection, transaction
from django.utils import timezone

from tests.factories import make_business, make_user
from tests.trimops.errands.errand_hands import all_errands, left_waiting, now_of, set_work, written
from trimops.errands.domain.errand_states import ErrandState
from trimops.errands.domain.pauses import MOST_TRIES
from trimops.errands.kinds import Gone, TryLater
from trimops.errands.models import Errand
from trimops.errands.only_one import only_one
from trimops.errands.services import run_errand as running
from trimops.errands.services.enqueue import enqueue
from trimops.errands.services.run_errand import BUSY_SECONDS, run_errand
from trimops.errands.services.tick import tick
from trimops.jobs import Job
from trimops.kernel.errors import RuleBroken
from trimops.tenancy.unscoped import unscoped
from trimops.watch.doing import Doing, done_by, who_does_it

pytestmark = pytest.mark.django_db(transaction=True)


@pytest.fixture
def does(monkeypatch):
    """What is done for a job in this test; each call is noted."""
    return partial(set_work, monkeypatch)


def test_it_is_done_after_the_commit_and_not_before(does):
    calls, business = does(lambda time: None), make_business()
    with transaction.atomic():
        errand = enqueue(Job.DRAFT_INVOICE, business.pk, visit_id=7)
        assert calls == []
    assert calls == [{"visit_id": 7}]
    assert now_of(errand).state == ErrandState.DONE


def test_one_of_a_transaction_that_rolls_back_never_was(does):
    calls, business = does(lambda time: None), make_business()
    with transaction.atomic():
        enqueue(Job.DRAFT_INVOICE, business.pk, visit_id=7)
        transaction.set_rollback(True)
    assert all_errands() == []
    assert calls == []


def test_done_is_done(does):
    calls, business = does(lambda time: None), make_business()
    errand = enqueue(Job.DRAFT_INVOICE, business.pk, visit_id=7)
    assert run_errand(errand_id=errand.pk) is None
    assert len(calls) == 1


def test_a_failure_costs_the_caller_nothing_and_is_tried_again_later(does):
    calls, business = does(lambda time: 1 / 0 if time == 1 else None), make_business()
    errand = enqueue(Job.DRAFT_INVOICE, business.pk, visit_id=7)
    row = now_of(errand)
    assert row.state == ErrandState.WAITING
    assert row.last_words == "ZeroDivisionError: division by zero"
    assert row.due_at > timezone.now()
    assert run_errand(errand_id=errand.pk, clock=lambda: row.due_at - timedelta(seconds=2)) is None
    assert tick(now=row.due_at + timedelta(seconds=5)) == 1
    assert run_errand(errand_id=errand.pk, clock=lambda: row.due_at) is ErrandState.DONE
    assert len(calls) == 2


def test_after_eight_tries_a_person_must_look_at_it(does):
    calls, business = does(lambda time: 1 / 0), make_business()
    errand = enqueue(Job.DRAFT_INVOICE, business.pk, visit_id=7)
    for days in range(1, MOST_TRIES + 2):
        run_errand(errand_id=errand.pk, clock=lambda days=days: timezone.now() + timedelta(days=days))
    assert len(calls) == MOST_TRIES
    assert now_of(errand).state == ErrandState.STUCK


def test_a_refusal_is_not_tried_again(does):
    def refuse(time):
        raise RuleBroken("The farm has no address: write one.")

    calls, business = does(refuse), make_business()
    errand = enqueue(Job.DRAFT_INVOICE, business.pk, visit_id=7)
    assert now_of(errand).state == ErrandState.STUCK
    assert now_of(errand).last_words == "The farm has no address: write one."
    assert len(calls) == 1


def test_what_comes_too_early_says_when_and_that_is_no_try(does):
    later = timezone.now() + timedelta(hours=9)

    def wait(time):
        raise TryLater(later, "quiet hours")

    does(wait)
    errand = enqueue(Job.DRAFT_INVOICE, make_business().pk, visit_id=7)
    row = now_of(errand)
    assert (row.state, row.due_at, row.tries) == (ErrandState.WAITING, later, 0)


def test_who_is_at_it_is_left_alone(does):
    calls, business = does(lambda time: None), make_business()
    errand = left_waiting(business)
    with only_one(f"errand {errand.pk}"):
        assert run_errand(errand_id=errand.pk) is None
    assert calls == []


def test_one_left_under_way_by_a_dead_process_is_done_anew(does):
    calls = does(lambda time: None)
    began = timezone.now() - timedelta(seconds=2)
    errand = written(state=ErrandState.UNDER_WAY.value, began_at=began, tries=1)
    assert run_errand(errand_id=errand.pk) is ErrandState.DONE
    assert (len(calls), now_of(errand).tries) == (1, 2)


def test_one_that_ends_its_process_each_time_is_given_up(does):
    calls = does(lambda time: None)
    errand = written(state=ErrandState.UNDER_WAY.value, began_at=timezone.now(), tries=MOST_TRIES)
    assert run_errand(errand_id=errand.pk) is ErrandState.STUCK
    assert calls == []
    assert "its process was ended" in now_of(errand).last_words


def test_a_job_that_nobody_knows_is_tried_again_and_harms_no_other(does):
    does(lambda time: None)
    errand = written()
    with unscoped("a test writes"):
        Errand.objects.filter(pk=errand.pk).update(job="visits.of_tomorrow")
    assert run_errand(errand_id=errand.pk) is ErrandState.WAITING
    assert "does not know the job" in now_of(errand).last_words
    assert tick(now=timezone.now() + timedelta(minutes=1)) == 0


def test_what_cannot_be_noted_is_noted_over_a_new_connection(does, monkeypatch):
    does(lambda time: None)
    ends, whole = [], running._end

    def broken_twice(*given):
        ends.append(given)
        if len(ends) < 3:
            raise DatabaseError("the server is going away")
        return whole(*given)

    monkeypatch.setattr(running, "END_PAUSES", (0.0, 0.0, 0.0))
    monkeypatch.setattr(running, "_end", broken_twice)
    errand = enqueue(Job.DRAFT_INVOICE, make_business().pk, visit_id=7)
    assert (len(ends), now_of(errand).state) == (3, ErrandState.DONE)


def test_whose_lock_went_while_at_it_leaves_the_last_word_to_who_took_over(does):
    """The later one ended as done; the first, which lost its connection, must not have it done a third time."""

    def taken_over(time):
        with unscoped("a test writes"):
            rows = Errand.objects.filter(state=ErrandState.UNDER_WAY.value)
            rows.update(state=ErrandState.DONE.value, began_at=timezone.now())
        raise OSError("the line broke")

    does(taken_over)
    errand = left_waiting()
    assert run_errand(errand_id=errand.pk) is None
    assert now_of(errand).state == ErrandState.DONE


def test_of_two_that_must_not_meet_the_second_comes_again_in_seconds(does):
    business, now = make_business(), timezone.now()
    calls = does(lambda time: None, alone="diary")
    errand = left_waiting(business)
    with only_one(f"diary of business {business.pk}"):
        assert run_errand(errand_id=errand.pk, clock=lambda: now) is ErrandState.WAITING
    row = now_of(errand)
    assert (row.tries, row.due_at, calls) == (0, now + timedelta(seconds=BUSY_SECONDS), [])
    assert run_errand(errand_id=errand.pk, clock=lambda: row.due_at) is ErrandState.DONE


def test_those_of_another_business_may_meet(does):
    calls = does(lambda time: None, alone="diary")
    errand = left_waiting()
    with only_one("diary of business 999999"):
        run_errand(errand_id=errand.pk)
    assert len(calls) == 1


def test_one_that_was_dropped_meanwhile_is_nobodys(does):
    calls = does(lambda time: None)
    assert run_errand(errand_id=987654321) is None
    assert calls == []


def test_an_errand_begun_by_another_inside_its_work_is_done_as_well(does):
    """As a job that leaves another: the second begins after the commit, while the first is still at its work."""
    business = make_business()

    def leave_another(time):
        if time == 1:
            enqueue(Job.DRAFT_INVOICE, business.pk, visit_id=8)

    calls = does(leave_another)
    enqueue(Job.DRAFT_INVOICE, business.pk, visit_id=7)
    assert calls == [{"visit_id": 7}, {"visit_id": 8}]
    assert [row.state for row in all_errands()] == ["done", "done"]


def test_beginning_and_ending_take_the_same_few_statements_each_time(does, django_assert_max_num_queries):
    does(lambda time: None)
    errand = left_waiting()
    with django_assert_max_num_queries(12 if connection.vendor == "postgresql" else 8):
        run_errand(errand_id=errand.pk)


@pytest.mark.parametrize(
    ("raised", "outcome"),
    [
        (TryLater(timezone.now()), "done"),
        (Gone("Visit 7"), "done"),
        (RuleBroken("No."), "failed"),
        (OSError(), "failed"),
    ],
)
def test_whoever_counts_failures_counts_no_waiting_and_nothing_gone(does, caplog, raised, outcome):
    def work(time):
        raise raised

    does(work)
    with caplog.at_level(logging.INFO, "trimops.watch.job_lines"):
        run_errand(errand_id=left_waiting().pk)
    (line,) = [record.told for record in caplog.records if record.name == "trimops.watch.job_lines"]
    assert line["outcome"] == outcome


def test_what_an_errand_does_is_noted_as_the_errands_for_who_asked(does):
    seen, user = [], make_user()
    does(lambda time: seen.append(who_does_it()))
    with done_by(Doing(by=user.pk, via="POST visit_finish", seen_from="192.0.2.7")):
        errand = left_waiting()
    own = written()
    for row in (errand, own):
        run_errand(errand_id=row.pk)
    via = "errand invoicing.draft_invoice"
    assert seen == [Doing(user.pk, via, request=str(errand.pk)), Doing(via=via, request=str(own.pk))]

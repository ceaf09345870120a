from datetime import timedelta

import pytest
from django.db import transaction
from django.utils import timezone

from tests.factories import make_business
from tests.trimops.errands.errand_hands import all_errands, now_of, set_work
from trimops.errands.domain.errand_states import ErrandState
from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job

pytestmark = pytest.mark.django_db(transaction=True)


def test_it_is_kept_with_its_business_and_ids(monkeypatch):
    set_work(monkeypatch, lambda time: None)
    business = make_business()
    with transaction.atomic():
        errand = enqueue(Job.DRAFT_INVOICE, business.pk, visit_id=7)
        row = now_of(errand)
    assert (row.business_id, row.job, row.ids, row.state) == (
        business.pk,
        "invoicing.draft_invoice",
        {"visit_id": 7},
        ErrandState.WAITING,
    )
    assert row.handed_out_at is not None


def test_one_for_later_begins_nothing_now(monkeypatch):
    calls = set_work(monkeypatch, lambda time: None)
    later = timezone.now() + timedelta(hours=2)
    errand = now_of(enqueue(Job.DRAFT_INVOICE, make_business().pk, not_before=later, visit_id=7))
    assert (errand.due_at, errand.handed_out_at, errand.state, calls) == (
        later,
        None,
        ErrandState.WAITING,
        [],
    )


def test_of_nested_transactions_the_outermost_commit_begins_it(monkeypatch):
    calls, business = set_work(monkeypatch, lambda time: None), make_business()
    with transaction.atomic():
        with transaction.atomic():
            enqueue(Job.DRAFT_INVOICE, business.pk, visit_id=7)
        assert calls == []
    assert calls == [{"visit_id": 7}]


def test_a_part_that_rolls_back_takes_its_errands_with_it_and_no_others(monkeypatch):
    calls, business = set_work(monkeypatch, lambda time: None), make_business()
    with transaction.atomic():
        enqueue(Job.DRAFT_INVOICE, business.pk, visit_id=7)
        with pytest.raises(ZeroDivisionError), transaction.atomic():
            enqueue(Job.DRAFT_INVOICE, business.pk, visit_id=8)
            raise ZeroDivisionError
    assert calls == [{"visit_id": 7}]
    assert [row.ids for row in all_errands()] == [{"visit_id": 7}]


def test_one_that_fails_leaves_the_caller_and_the_next_one_alone(monkeypatch):
    calls = set_work(monkeypatch, lambda time: 1 / 0 if time == 1 else None)
    business = make_business()
    with transaction.atomic():
        enqueue(Job.DRAFT_INVOICE, business.pk, visit_id=13)
        enqueue(Job.DRAFT_INVOICE, business.pk, visit_id=14)
    assert [call["visit_id"] for call in calls] == [13, 14]
    assert [row.state for row in all_errands()] == ["waiting", "done"]

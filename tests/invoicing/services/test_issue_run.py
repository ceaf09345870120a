"""A run of drafts in the background: each job does its work once, and one refusal stops no other."""

import logging

import pytest

from invoicing.models import FarmTerms, Invoice, Sending
from invoicing.services.issue_run import issue_in_run, start_issue_run
from tests.factories import NOON
from tests.invoicing.drafts import plain_draft
from trimops.errands.domain.errand_states import ErrandState
from trimops.errands.services.enqueue import enqueue
from trimops.errands.services.run_errand import run_errand
from trimops.jobs import Job


@pytest.fixture
def addressed(house):
    FarmTerms.objects.create(business=house.business, farm=house.farm, send_to=["money@example.invalid"])
    return house


def run(invoice, house, *, send):
    return issue_in_run(invoice=invoice, at=NOON, by=house.office, send=send)


def test_each_draft_is_asked_for_and_one_that_is_refused_stays_a_draft(
    house, django_capture_on_commit_callbacks, caplog
):
    wrong, right = plain_draft(house), plain_draft(house)
    wrong.lines.within(house.scope).delete()
    with caplog.at_level(logging.WARNING), django_capture_on_commit_callbacks(execute=True):
        assert start_issue_run(invoices=[wrong, right], by=house.office) == 2
    assert "there is nothing to bill" in caplog.text
    rows = Invoice.objects.within(house.scope)
    assert (rows.drafts().get().pk, rows.issued().get().pk) == (wrong.pk, right.pk)
    assert start_issue_run(invoices=rows.issued(), by=house.office) == 0


def test_a_job_that_comes_twice_issues_and_sends_once(addressed):
    draft = plain_draft(addressed)
    first, second = run(draft, addressed, send=True), run(draft, addressed, send=True)
    assert first.number == second.number == "INV-2026-0001"
    assert Sending.objects.within(addressed.scope).count() == 1


def test_one_that_was_issued_but_not_sent_is_sent_when_its_job_comes_again(addressed):
    draft = plain_draft(addressed)
    run(draft, addressed, send=False)
    assert not Sending.objects.within(addressed.scope).exists()
    run(draft, addressed, send=True)
    assert Sending.objects.within(addressed.scope).count() == 1


def test_without_an_address_it_is_issued_all_the_same(house):
    house.farm.email = ""
    house.farm.save()
    assert run(plain_draft(house), house, send=True).is_issued
    assert not Sending.objects.within(house.scope).exists()


def test_a_draft_taken_away_before_its_job_came_is_no_fault(house):
    draft = plain_draft(house)
    key = draft.pk
    draft.delete()
    errand = enqueue(Job.ISSUE_INVOICE, house.business.pk, invoice_id=key, by_id=house.office.pk)
    assert run_errand(errand_id=errand.pk) is ErrandState.DONE
    assert not Invoice.objects.within(house.scope).exists()

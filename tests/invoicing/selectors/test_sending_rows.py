from datetime import timedelta

import pytest

from invoicing.domain.sending_states import ONLY_IN_THE_FOLDER, SentPaper
from invoicing.models import Sending
from invoicing.selectors.sending_rows import (
    SendingFilter,
    failed,
    never_mailed,
    sending_counts,
    sending_row,
    sendings,
    sendings_of,
    to_see_to,
    told_first,
    unclear,
    waiting,
)
from tests.factories import NOON, make_house
from tests.invoicing.issued_row import TODAY, issued_row
from tests.invoicing.services.test_queue_sending import queue

LATER = NOON + timedelta(hours=1)


def put(house, **columns):
    sending = queue(house)
    Sending.objects.within(house.scope).filter(pk=sending.pk).update(**columns)
    sending.refresh_from_db()
    return sending


def test_each_stands_in_the_list_of_what_is_to_be_done_about_it(house):
    queued, going = put(house, paper="invoice"), put(house, paper="invoice", state="going")
    again = put(house, paper="invoice", state="failed", next_try_at=LATER)
    stuck, unknown = put(house, paper="invoice", state="failed"), put(house, paper="invoice", state="unclear")
    put(house, paper="invoice", state="failed", left_at=NOON)
    put(house, paper="invoice", state="handed_over")
    assert set(waiting(house.scope)) == {queued, going, again}
    assert list(failed(house.scope)) == [stuck]
    assert list(unclear(house.scope)) == [unknown]
    assert set(to_see_to(house.scope)) == {stuck, unknown}
    counts = sending_counts(house.scope)
    assert (counts.waiting, counts.failed, counts.unclear, counts.to_see_to) == (3, 1, 1, 2)
    assert sendings(house.scope, SendingFilter.ALL).count() == 7
    assert not sendings(make_house("Far Side").scope, SendingFilter.ALL)


def test_a_failure_is_settled_by_a_later_mail_with_the_same_paper_and_by_nothing_else(house):
    first, second = issued_row(house), issued_row(house, "INV-2026-0002")
    failing = put(house, paper="invoice", invoice=first, state="failed")
    put(house, paper="invoice", invoice=first, state="handed_over", address="second@example.invalid")
    put(house, paper="invoice", invoice=second, state="handed_over", queued_at=LATER)
    put(house, paper="reminder", invoice=first, state="handed_over", queued_at=LATER)
    put(house, paper="invoice", invoice=first, state="failed", queued_at=LATER, left_at=LATER)
    assert list(failed(house.scope)) == [failing]
    put(house, paper="invoice", invoice=first, state="queued", queued_at=LATER)
    assert not failed(house.scope)


def test_a_statement_is_settled_by_a_later_one_to_the_same_farm(house):
    put(house, state="unclear")
    assert unclear(house.scope).count() == 1
    put(house, state="handed_over", queued_at=LATER)
    assert not unclear(house.scope)


@pytest.mark.parametrize(
    ("columns", "mark", "words", "waits"),
    [
        ({}, "planned", "Waiting to go", True),
        ({"state": "going"}, "planned", "Going now", True),
        ({"state": "handed_over"}, "done", "Handed over", False),
        ({"state": "handed_over", "last_words": ONLY_IN_THE_FOLDER}, "due", "Only in the mail folder", False),
        ({"state": "failed"}, "urgent", "Did not go", False),
        ({"state": "failed", "next_try_at": LATER}, "due", "Did not go yet", True),
        ({"state": "unclear"}, "urgent", "Not known whether it went", False),
        ({"state": "failed", "left_at": NOON}, "plain", "Did not go, left", False),
    ],
)
def test_only_what_was_handed_over_wears_the_mark_of_what_is_done(house, columns, mark, words, waits):
    row = sending_row(put(house, **columns))
    assert (row.mark, row.words, row.waits) == (mark, words, waits)


def test_of_two_addresses_the_one_that_failed_is_told_first_but_not_one_of_an_earlier_time(house):
    invoice = issued_row(house)
    put(house, invoice=invoice, state="failed", address="old@example.invalid")
    now = {"invoice": invoice, "queued_at": LATER}
    put(house, **now, state="handed_over", address="good@example.invalid")
    assert told_first(sendings_of(invoice)).sending.address == "good@example.invalid"
    put(house, **now, state="unclear", address="bad@example.invalid")
    assert told_first(sendings_of(invoice)).sending.address == "bad@example.invalid"
    assert told_first([]) is None


def test_what_was_issued_lately_and_never_mailed_is_told(house):
    old = issued_row(house, "INV-1", issued_on=TODAY - timedelta(days=1))
    for number, state in (("INV-2", "handed_over"), ("INV-3", "queued")):
        put(house, invoice=issued_row(house, number), state=state)
    bare, missed = issued_row(house, "INV-4"), issued_row(house, "INV-5")
    put(house, invoice=missed, state="failed")
    assert never_mailed(house.scope, TODAY) == [bare, missed]
    assert never_mailed(house.scope, old.issued_on) == [old, bare, missed]
    assert never_mailed(make_house("Far Side").scope, TODAY) == []
    house.farm.erased_at = NOON
    house.farm.save()
    assert never_mailed(house.scope, TODAY) == []


def test_the_mails_of_one_invoice_are_read_without_their_papers(house, django_assert_num_queries):
    invoice = issued_row(house)
    for _ in range(3):
        queue(house, paper=SentPaper.INVOICE, invoice=invoice, attachment=None)
    queue(house)
    with django_assert_num_queries(1) as asked:
        assert len(sendings_of(invoice)) == 3
    assert '"attachment"' not in asked.captured_queries[0]["sql"]

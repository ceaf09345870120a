from datetime import timedelta

from invoicing.domain.sent_papers import SentPaper
from invoicing.models import Sending
from invoicing.selectors.sending_rows import (
    SendingFilter,
    never_mailed,
    sending_counts,
    sending_of_mail,
    sendings,
    sendings_of,
    to_see_to,
    told_first,
    waiting,
)
from invoicing.services.make_mail import MailPaper
from tests.factories import NOON, make_house
from tests.invoicing.issued_row import TODAY, issued_row
from tests.invoicing.services.test_queue_sending import queue
from tests.trimops.outbox.messages import put as put_message
from trimops.outbox.models import Outgoing

LATER = NOON + timedelta(hours=1)


def put(house, state="waiting", *, at=NOON, address="office@example.invalid", **columns):
    sending = queue(house, address=address)
    Outgoing.objects.within(house.scope).filter(pk=sending.outgoing_id).update(state=state, written_at=at)
    Sending.objects.within(house.scope).filter(pk=sending.pk).update(**columns)
    return Sending.objects.within(house.scope).get(pk=sending.pk)


def test_each_stands_in_the_list_of_what_is_to_be_done_about_it(house):
    bill = {"paper": "invoice"}
    waits, going = put(house, **bill), put(house, "going", **bill)
    stuck, late = put(house, "failed", **bill), put(house, "lapsed", **bill)
    put(house, "left", **bill)
    put(house, "went", **bill)
    put_message(house)
    assert set(waiting(house.scope)) == {waits, going}
    assert set(to_see_to(house.scope)) == {stuck, late}
    counts = sending_counts(house.scope)
    assert (counts.waiting, counts.to_see_to) == (2, 2)
    assert sendings(house.scope, SendingFilter.ALL).count() == 6
    assert not sendings(make_house("Far Side").scope, SendingFilter.ALL)


def test_a_failure_is_settled_by_a_later_mail_with_the_same_paper_and_by_nothing_else(house):
    first, second = issued_row(house), issued_row(house, "INV-2026-0002")
    failing = put(house, "failed", paper="invoice", invoice=first)
    put(house, "went", paper="invoice", invoice=first, address="second@example.invalid")
    put(house, "went", paper="invoice", invoice=second, at=LATER)
    put(house, "went", paper="reminder", invoice=first, at=LATER)
    put(house, "left", paper="invoice", invoice=first, at=LATER)
    assert list(to_see_to(house.scope)) == [failing]
    put(house, paper="invoice", invoice=first, at=LATER)
    assert not to_see_to(house.scope)


def test_a_statement_is_settled_by_a_later_one_to_the_same_farm(house):
    put(house, "failed")
    assert to_see_to(house.scope).count() == 1
    put(house, "went", at=LATER)
    assert not to_see_to(house.scope)


def test_of_two_addresses_the_one_that_failed_is_told_first_but_not_one_of_an_earlier_time(house):
    invoice = issued_row(house)
    put(house, "failed", invoice=invoice, address="old@example.invalid")
    put(house, "went", invoice=invoice, at=LATER, address="good@example.invalid")
    assert told_first(sendings_of(invoice)).sending.outgoing.address == "good@example.invalid"
    put(house, "failed", invoice=invoice, at=LATER, address="bad@example.invalid")
    assert told_first(sendings_of(invoice)).sending.outgoing.address == "bad@example.invalid"
    assert told_first([]) is None


def test_what_was_issued_lately_and_never_mailed_is_told(house):
    old = issued_row(house, "INV-1", issued_on=TODAY - timedelta(days=1))
    for number, state in (("INV-2", "went"), ("INV-3", "waiting")):
        put(house, state, invoice=issued_row(house, number))
    bare, missed = issued_row(house, "INV-4"), issued_row(house, "INV-5")
    put(house, "failed", invoice=missed)
    assert never_mailed(house.scope, TODAY) == [bare, missed]
    assert never_mailed(house.scope, old.issued_on) == [old, bare, missed]
    assert never_mailed(make_house("Far Side").scope, TODAY) == []
    house.farm.erased_at = NOON
    house.farm.save()
    assert never_mailed(house.scope, TODAY) == []


def test_the_mails_of_one_invoice_are_read_without_their_papers_and_secrets(house, django_assert_num_queries):
    invoice = issued_row(house)
    for _ in range(3):
        queue(house, paper=MailPaper(SentPaper.INVOICE, invoice))
    queue(house)
    with django_assert_num_queries(1) as asked:
        assert len(sendings_of(invoice)) == 3
    assert '"secret"' not in asked.captured_queries[0]["sql"]


def test_a_mail_leads_to_its_paper(house):
    sending = put(house)
    assert sending_of_mail(house.scope, sending.outgoing_id) == sending
    assert sending_of_mail(house.scope, put_message(house).pk) is None
    assert sending_of_mail(make_house("Far Side").scope, sending.outgoing_id) is None

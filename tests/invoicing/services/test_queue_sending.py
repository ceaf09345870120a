import pytest
from django.db import transaction

from farms.services.refuse_erased import FarmIsErased
from invoicing.domain.sent_papers import SentPaper
from invoicing.models import InvoiceLink, Sending
from invoicing.services.make_mail import MailPaper, NothingToSend
from invoicing.services.queue_sending import AddressMakesNoSense, queue_sending
from tests.factories import NOON
from tests.invoicing.issued_row import PDF, issued_row
from tests.trimops.outbox.messages import log, now


def queue(house, **changes):
    asked = {
        "paper": MailPaper(SentPaper.STATEMENT, attachment=PDF, attachment_name="account.pdf"),
        "address": "office@example.invalid",
        "subject": "Your account",
        "body": "Attached.",
        **changes,
    }
    return queue_sending(farm=house.farm, at=NOON, by=house.office, **asked)


def test_it_waits_with_its_words_and_who_asked(house):
    sending = queue(house, address="  office@example.invalid ", subject="Your\r\nBcc: x@example.invalid")
    mail = sending.outgoing
    assert (mail.state, mail.topic, mail.address) == ("waiting", "statement", "office@example.invalid")
    assert (mail.subject, mail.farm_id) == ("Your Bcc: x@example.invalid", house.farm.pk)
    assert log(mail) == [("waiting", f"Asked for by {house.office}")]


def test_it_begins_once_the_transaction_is_committed(house, django_capture_on_commit_callbacks, mailoutbox):
    with django_capture_on_commit_callbacks(execute=True):
        sending = queue(house)
        assert not mailoutbox
    assert now(sending.outgoing).state == "went"
    assert [mail.to for mail in mailoutbox] == [["office@example.invalid"]]


def test_nothing_is_left_of_one_that_is_rolled_back(house, django_capture_on_commit_callbacks, mailoutbox):
    with django_capture_on_commit_callbacks(execute=True), transaction.atomic():
        queue(house)
        transaction.set_rollback(True)
    assert not mailoutbox
    assert not Sending.objects.within(house.scope).exists()


@pytest.mark.parametrize("address", ["", "nobody", "a@b", "two@example.invalid, three@example.invalid"])
def test_what_is_no_address_is_refused_by_its_name(house, address):
    with pytest.raises(AddressMakesNoSense, match="no e-mail address"):
        queue(house, address=address)


@pytest.mark.parametrize(
    "lacks", [{"subject": " "}, {"body": "\n"}, {"paper": MailPaper(SentPaper.STATEMENT)}]
)
def test_a_mail_wants_a_subject_a_text_and_a_paper(house, lacks):
    with pytest.raises(NothingToSend):
        queue(house, **lacks)


def test_a_link_wants_an_invoice(house):
    assert not queue(house, with_link=True).with_link
    sending = queue(house, with_link=True, paper=MailPaper(SentPaper.INVOICE, issued_row(house)))
    assert sending.with_link
    assert sending.link == InvoiceLink.objects.within(house.scope).get()
    assert "/bill/" in sending.outgoing.secret
    assert "/bill/" not in sending.outgoing.body


def test_nothing_goes_to_a_farm_that_was_erased(house):
    house.farm.erased_at = NOON
    with pytest.raises(FarmIsErased):
        queue(house)

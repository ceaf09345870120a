import pytest
from django.db import transaction

from farms.services.refuse_erased import FarmIsErased
from invoicing.domain.sending_states import SentPaper
from invoicing.models import Sending
from invoicing.selectors.sending_rows import log_of
from invoicing.services.queue_sending import AddressMakesNoSense, NothingToSend, queue_sending
from tests.factories import NOON
from tests.invoicing.issued_row import PDF, issued_row


def queue(house, **changes):
    asked = {
        "paper": SentPaper.STATEMENT,
        "address": "office@example.invalid",
        "subject": "Your account",
        "body": "Attached.",
        "attachment": PDF,
        "attachment_name": "account.pdf",
        **changes,
    }
    return queue_sending(farm=house.farm, at=NOON, by=house.office, **asked)


def test_it_waits_with_its_words_and_who_asked(house):
    sending = queue(house, address="  office@example.invalid ", subject="Your\r\nBcc: x@example.invalid")
    assert (sending.state, sending.tries, sending.address) == ("queued", 0, "office@example.invalid")
    assert sending.subject == "Your Bcc: x@example.invalid"
    assert [event.words for event in log_of(sending)] == [f"Asked for by {house.office}"]


def test_it_begins_once_the_transaction_is_committed(house, django_capture_on_commit_callbacks, mailoutbox):
    with django_capture_on_commit_callbacks(execute=True):
        sending = queue(house)
        assert not mailoutbox
    sending.refresh_from_db()
    assert sending.state == "handed_over"
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


@pytest.mark.parametrize("lacks", [{"subject": " "}, {"body": "\n"}, {"attachment": None}])
def test_a_mail_wants_a_subject_a_text_and_a_paper(house, lacks):
    with pytest.raises(NothingToSend):
        queue(house, **lacks)


def test_a_link_wants_an_invoice(house):
    assert not queue(house, with_link=True).with_link
    assert queue(house, with_link=True, invoice=issued_row(house)).with_link


def test_nothing_goes_to_a_farm_that_was_erased(house):
    house.farm.erased_at = NOON
    with pytest.raises(FarmIsErased):
        queue(house)

"""What becomes of a text message, by each way that the setting can name."""

from datetime import UTC, datetime
from uuid import UUID

import pytest
from django.core import mail

from trimops.outbox.domain.outgoing_states import Channel
from trimops.outbox.senders.ready import Ready, Refused
from trimops.outbox.senders.senders import SENDERS
from trimops.outbox.senders.sms import send_by_sms

KEY = UUID(int=7)


def text(body="On my way, there in 30 minutes.", number="07700 900123", country="GB"):
    return Ready(
        business_id=1,
        key=KEY,
        channel=Channel.SMS,
        address=number,
        body=body,
        at=datetime(2026, 3, 3, 9, tzinfo=UTC),
        subject="On the way",
        reply_to="office@hooves.example",
        from_name="Hooves",
        country=country,
    )


def test_text_messages_go_by_this_sender():
    assert SENDERS[Channel.SMS] is send_by_sms


@pytest.mark.parametrize("way", ["", "pigeon"])
def test_without_a_way_it_fails_for_good_with_the_setting_to_mend(settings, way):
    settings.SMS = way
    with pytest.raises(Refused, match="TRIMOPS_SMS") as no:
        send_by_sms(text())
    assert no.value.for_good


def test_a_number_that_takes_no_texts_fails_for_good_in_words(settings):
    settings.SMS = "file"
    with pytest.raises(Refused, match="no mobile number") as no:
        send_by_sms(text(number="0113 496 0123"))
    assert no.value.for_good


def test_as_a_file_it_stands_in_the_data_folder_and_a_repeat_is_the_same_file(settings, tmp_path):
    settings.SMS, settings.DATA_DIR = "file", tmp_path
    said = send_by_sms(text("Zażółć 🐄 " * 10))
    send_by_sms(text("Zażółć 🐄 " * 10))
    (written,) = (tmp_path / "sms").iterdir()
    assert written.name == f"{KEY}.txt"
    assert written.read_text("utf-8") == "To: +447700900123\nParts: 2\n\n" + "Zażółć 🐄 " * 10 + "\n"
    assert "nobody carried it further" in said


def test_a_folder_that_cannot_be_written_is_told(settings, tmp_path):
    (tmp_path / "sms").write_text("in the way")
    settings.SMS, settings.DATA_DIR = "file", tmp_path
    with pytest.raises(Refused, match="could not be written"):
        send_by_sms(text())


def test_by_mail_it_goes_to_the_number_at_the_gateway_as_nothing_but_the_text(settings):
    settings.SMS = "mail:gateway.example"
    send_by_sms(text(number="085 012 3456", country="IE"))
    (sent,) = mail.outbox
    assert (sent.to, sent.subject, sent.body) == (
        ["353850123456@gateway.example"],
        "",
        "On my way, there in 30 minutes.",
    )
    assert sent.attachments == []
    assert "Reply-To" not in sent.message()


def test_by_mail_a_long_text_says_how_many_parts_it_takes(settings):
    settings.SMS = "mail:gateway.example"
    assert send_by_sms(text("a" * 161)).endswith("(2 parts)")

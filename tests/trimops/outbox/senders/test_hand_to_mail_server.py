"""Against a real mail server on the loopback. RFC 5321, 4.2.1: 4yz may be tried again, 5yz should not be; 4.1.1.4 and
4.5.5: after the end of the text only the answer tells who has the mail."""

import smtplib

import pytest
from django.core.mail import EmailMessage

from tests.services.processes import free_port
from trimops.outbox.senders import hand_to_mail_server as adapter
from trimops.outbox.senders.hand_to_mail_server import hand_to_mail_server
from trimops.outbox.senders.ready import Away, Refused, Unsure


def mail():
    return EmailMessage("Bill", "Text.", "us@example.invalid", ["farm@example.invalid"])


def refusal():
    with pytest.raises(Refused) as caught:
        hand_to_mail_server(mail())
    return str(caught.value), caught.value.for_good


def test_what_it_said_when_it_took_the_mail_is_told(mail_line):
    assert hand_to_mail_server(mail()) == "250 2.0.0 taken as Q1"
    (taken,) = mail_line.taken
    assert (taken.recipients, taken.mail["Subject"]) == (("farm@example.invalid",), "Bill")


@pytest.mark.parametrize(
    ("does", "words", "for_good"),
    [
        ("rcpt 550 5.1.1 no such person here", "550 5.1.1 no such person here", True),
        ("rcpt 450 4.2.1 come back later", "450 4.2.1 come back later", False),
        ("451 4.3.0 short of disk", "451 4.3.0 short of disk", False),
        ("554 5.7.1 it looks like rubbish", "554 5.7.1 it looks like rubbish", True),
        # Ours to mend, not the farm's: it is tried again.
        ("mail 553 5.7.1 who are you", "553 5.7.1 who are you", False),
        ("connect 421 4.7.0 too busy", "421 4.7.0 too busy", False),
        ("connect 554 not you", "554 not you", False),
    ],
)
def test_a_refusal_is_told_in_the_servers_words(mail_line, does, words, for_good):
    mail_line.does = [does]
    assert refusal() == (words, for_good)
    assert not mail_line.taken


@pytest.mark.parametrize("does", ["hang up", "take and hang up"])
def test_a_line_that_breaks_before_the_answer_leaves_it_unclear(mail_line, does):
    mail_line.does = [does]
    with pytest.raises(Unsure, match="The line broke while the mail was handed over"):
        hand_to_mail_server(mail())


def test_a_line_that_breaks_before_the_text_is_a_failure(mail_line):
    mail_line.does = ["hang up early"]
    words, for_good = refusal()
    assert "Connection unexpectedly closed" in words
    assert not for_good


def test_a_server_that_is_silent_after_the_text_leaves_it_unclear(mail_line, monkeypatch):
    mail_line.does = ["silent"]
    monkeypatch.setattr(adapter, "TIMEOUT_SECONDS", 0.3)
    with pytest.raises(Unsure, match="timed out"):
        hand_to_mail_server(mail())


def test_no_server_is_told_with_its_name(mail_line, settings):
    settings.EMAIL_PORT = free_port()
    with pytest.raises(Away, match=r"^No mail server at 127.0.0.1: .*refused"):
        hand_to_mail_server(mail())


def test_how_the_talk_ends_changes_nothing_about_what_was_taken(mail_line, monkeypatch):
    def cut_off(server):
        raise smtplib.SMTPResponseException(421, b"gone")

    monkeypatch.setattr(smtplib.SMTP, "quit", cut_off)
    with pytest.warns(ResourceWarning):
        assert hand_to_mail_server(mail()) == "250 2.0.0 taken as Q1"


def test_without_a_mail_server_it_is_a_file_and_says_so(settings, tmp_path):
    settings.EMAIL_BACKEND = "django.core.mail.backends.filebased.EmailBackend"
    settings.EMAIL_FILE_PATH = str(tmp_path)
    assert "it reaches nobody" in hand_to_mail_server(mail())
    (written,) = tmp_path.iterdir()
    assert b"Subject: Bill" in written.read_bytes()


def test_a_mail_folder_that_cannot_be_written_is_a_failure(settings, tmp_path):
    settings.EMAIL_BACKEND = "django.core.mail.backends.filebased.EmailBackend"
    settings.EMAIL_FILE_PATH = str(tmp_path / "file" / "below")
    (tmp_path / "file").write_text("in the way")
    words, for_good = refusal()
    assert words.startswith("It could not be written to the mail folder")
    assert not for_good


def test_signs_that_no_database_takes_are_left_out_of_what_it_said(mail_line):
    mail_line.does = ["550 5.7.1 not\0\x07 you"]
    assert refusal() == ("550 5.7.1 not you", True)

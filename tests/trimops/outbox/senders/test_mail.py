"""RFC 5322: one Message-ID for one message, 3.6.4; an answer goes to Reply-To, 3.6.2. RFC 3834, 5: Auto-Submitted.

RFC 6047, 2.4: a calendar part says its method as a parameter of its type. From memory of these texts.
"""

from email import message_from_bytes
from email.policy import default
from uuid import UUID

import pytest

from tests.factories import NOON
from trimops.outbox.domain.outgoing_states import ONLY_IN_THE_FOLDER, Channel
from trimops.outbox.senders.mail import make_mail, send_by_mail
from trimops.outbox.senders.ready import Part, Ready, Refused

KEY = UUID("0192d3a0-0000-7000-8000-000000000001")
CALENDAR = "BEGIN:VCALENDAR\r\nSUMMARY:Höfe schneiden – Dienstag\r\nEND:VCALENDAR\r\n".encode()


def ready(**changes):
    asked = {
        "business_id": 1,
        "key": KEY,
        "channel": Channel.MAIL,
        "address": "farm@example.invalid",
        "subject": "We come on Tuesday",
        "body": "At ten.\n",
        "at": NOON,
        "from_name": "Ash & Rye\nFoot Trimming",
        **changes,
    }
    return Ready(**asked)


def over_the_line(told):
    return message_from_bytes(make_mail(told).message().as_bytes(), policy=default)


@pytest.fixture
def site(settings):
    settings.DEFAULT_FROM_EMAIL = "Site <out@trim.example>"


@pytest.mark.usefixtures("site")
def test_it_comes_from_the_business_at_our_address_and_is_answered_to_the_business():
    said = over_the_line(ready(reply_to="office@ashrye.example"))
    assert said["From"] == "Ash & Rye Foot Trimming <out@trim.example>"
    assert (said["To"], said["Reply-To"]) == ("farm@example.invalid", "office@ashrye.example")
    assert said["Message-ID"] == f"<{KEY}@trim.example>"
    assert over_the_line(ready())["Message-ID"] == said["Message-ID"]


@pytest.mark.parametrize(("is_automatic", "header"), [(True, "auto-generated"), (False, None)])
def test_what_no_person_sent_says_so(is_automatic, header):
    assert over_the_line(ready(is_automatic=is_automatic))["Auto-Submitted"] == header


def test_papers_hang_on_it_under_their_names():
    parts = [
        Part("ä.pdf", "application/pdf", b"%PDF\x00\xff"),
        Part("b.xml", "application/xml", b"<b/>"),
    ]
    said = over_the_line(ready(parts=parts))
    papers = [
        (each.get_filename(), each.get_content_type(), each.get_content()) for each in said.iter_attachments()
    ]
    assert papers == [("ä.pdf", "application/pdf", b"%PDF\x00\xff"), ("b.xml", "application/xml", b"<b/>")]
    assert said.get_body().get_content() == "At ten.\n"


@pytest.mark.parametrize(
    "media_type", ["text/calendar; method=REQUEST", 'text/calendar; charset=utf-8; method="REQUEST"']
)
def test_a_calendar_is_another_form_of_the_text_with_its_method(media_type):
    paper = Part("a.pdf", "application/pdf", b"%PDF")
    said = over_the_line(ready(parts=[Part("", media_type, CALENDAR, is_alternative=True), paper]))
    assert said.get_content_type() == "multipart/mixed"
    forms = next(said.iter_parts())
    assert forms.get_content_type() == "multipart/alternative"
    text, calendar = forms.iter_parts()
    assert (text.get_content_type(), calendar.get_content_type()) == ("text/plain", "text/calendar")
    assert (calendar.get_param("method"), calendar.get_param("charset")) == ("REQUEST", "utf-8")
    assert calendar.get_payload(decode=True) == CALENDAR
    assert [each.get_filename() for each in said.iter_attachments() if each.get_filename()] == ["a.pdf"]
    assert said["Message-ID"] == f"<{KEY}@localhost>"


def test_a_calendar_alone_makes_no_mixed_mail():
    said = over_the_line(
        ready(parts=[Part("", "text/calendar; method=CANCEL", CALENDAR, is_alternative=True)])
    )
    assert said.get_content_type() == "multipart/alternative"
    assert said.get_body(("plain",)).get_content() == "At ten.\n"


@pytest.mark.parametrize("address", ["nobody", "a@b.example, c@d.example", "a@b.example\nBcc: c@d.example"])
def test_what_is_no_address_is_refused_for_good_and_speaks_to_nobody(address, mailoutbox):
    with pytest.raises(Refused) as refused:
        send_by_mail(ready(address=address))
    assert refused.value.for_good
    assert not mailoutbox


def test_without_a_mail_server_its_words_say_that_it_reaches_nobody(mailoutbox):
    assert send_by_mail(ready()) == ONLY_IN_THE_FOLDER
    assert len(mailoutbox) == 1

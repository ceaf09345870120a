"""Each try is kept; a mail goes once however often its job runs; a failed mail never looks sent."""

from datetime import timedelta
from threading import Event

import pytest

from invoicing.models import InvoiceLink, Sending
from invoicing.selectors.sending_rows import log_of
from invoicing.services import hand_over_sending as service
from invoicing.services import queue_sending as queue_service
from invoicing.services.forget_sendings import forget_sendings
from invoicing.services.hand_over_sending import hand_over_sending
from invoicing.services.leave_sending import leave_sending
from invoicing.services.make_mail import PaperIsMissing
from invoicing.services.send_again import send_again
from invoicing.services.sweep_sendings import sweep_sendings
from tests.factories import NOON, make_house
from tests.invoicing.issued_row import issued_row
from tests.invoicing.services.test_make_mail import invoice_sending
from tests.invoicing.services.test_queue_sending import queue
from tests.many_hands import ManyHands
from tests.services.processes import free_port

MINUTE = timedelta(minutes=1)


@pytest.fixture
def house(db):
    return make_house()


def go(sending, at, end=None):
    times = iter([at, end or at])
    return hand_over_sending(sending=sending, clock=lambda: next(times))


def log(sending):
    return [(event.state, event.words) for event in log_of(sending)][1:]


def links(house):
    return InvoiceLink.objects.within(house.scope)


def test_a_mail_that_is_taken_is_handed_over_in_the_servers_words(house, mail_line):
    sending = invoice_sending(house, with_xml=True)
    row = go(sending, NOON)
    assert (row.state, row.handed_over_at, row.last_words) == ("handed_over", NOON, "250 2.0.0 taken as Q1")
    assert log(row) == [("going", "Try 1"), ("handed_over", "250 2.0.0 taken as Q1")]
    (taken,) = mail_line.taken
    names = [part.get_filename() for part in taken.mail.iter_attachments()]
    assert names == ["INV-2026-0001.pdf", "INV-2026-0001.xml"]


def test_a_person_the_server_does_not_know_is_not_tried_again(house, mail_line):
    mail_line.does = ["rcpt 550 5.1.1 no such person here"]
    row = go(queue(house), NOON)
    assert (row.state, row.next_try_at, row.handed_over_at) == ("failed", None, None)
    assert row.last_words == "550 5.1.1 no such person here"
    assert go(row, NOON + timedelta(days=1)) is None
    assert mail_line.came == 1


def test_what_is_refused_for_now_is_tried_again_when_its_time_has_come(house, mail_line):
    mail_line.does = ["451 4.3.0 short of disk", "take"]
    sending = queue(house)
    row = go(sending, NOON)
    assert (row.state, row.next_try_at) == ("failed", NOON + MINUTE)
    assert go(sending, NOON + MINUTE / 2) is None
    row = go(sending, NOON + MINUTE)
    assert (row.state, row.tries, row.next_try_at) == ("handed_over", 2, None)
    assert [state for state, _ in log(row)] == ["going", "failed", "going", "handed_over"]
    assert len(mail_line.taken) == 1


def test_after_six_tries_in_vain_it_is_for_a_person_to_look_at(house, mail_line):
    mail_line.does = ["451 later"]
    sending, at, waits = queue(house), NOON, []
    while (row := go(sending, at)).next_try_at is not None:
        waits.append((row.next_try_at - at) / MINUTE)
        at = row.next_try_at
    assert waits == [1, 5, 30, 120, 480]
    assert (row.state, row.tries) == ("failed", 6)


def test_while_no_server_is_found_the_others_wait_a_minute_where_they_are(house, mail_line, settings):
    port, settings.EMAIL_PORT = settings.EMAIL_PORT, free_port()
    first, second = queue(house), queue(house)
    row = go(first, NOON)
    assert (row.state, row.next_try_at) == ("failed", NOON + MINUTE)
    assert row.last_words.startswith("No mail server at 127.0.0.1: ")
    settings.EMAIL_PORT = port
    assert go(second, NOON) is None
    assert (row_state(second), mail_line.came) == ("queued", 0)
    sweep_sendings(scope=house.scope, at=NOON, all_now=True)
    assert go(second, NOON).state == "handed_over"


@pytest.mark.parametrize("does", ["hang up", "take and hang up"])
def test_a_line_that_breaks_after_the_text_is_never_called_sent_nor_sent_again_by_itself(
    house, mail_line, does
):
    mail_line.does = [does]
    row = go(queue(house), NOON)
    assert (row.state, row.next_try_at, row.handed_over_at) == ("unclear", None, None)
    assert go(row, NOON + timedelta(days=1)) is None


def test_sent_again_by_a_person_it_bears_the_same_message_id(house, mail_line):
    mail_line.does = ["take and hang up", "take"]
    row = go(queue(house), NOON)
    again = send_again(sending=row, at=NOON + MINUTE, by=house.owner)
    assert go(again, NOON + MINUTE).state == "handed_over"
    first, second = (taken.mail["Message-ID"] for taken in mail_line.taken)
    assert first == second


def test_the_same_job_run_twice_sends_once(house, mail_line):
    sending = queue(house)
    assert go(sending, NOON) is not None
    assert go(sending, NOON) is None
    assert len(mail_line.taken) == 1


def test_what_a_person_left_does_not_go(house, mail_line):
    sending = queue(house)
    leave_sending(sending=sending, at=NOON, by=house.owner)
    assert go(sending, NOON) is None
    assert mail_line.came == 0


def test_a_mail_that_cannot_be_made_says_why_and_speaks_to_nobody(house, mail_line, monkeypatch):
    def nothing(*, sending, link):
        raise PaperIsMissing("The paper is gone.")

    monkeypatch.setattr(service, "make_mail", nothing)
    row = go(queue(house), NOON)
    assert (row.state, row.next_try_at, mail_line.came) == ("failed", None, 0)
    assert row.last_words == "The mail could not be made: The paper is gone."


def test_the_link_of_a_mail_that_did_not_go_is_closed_and_the_next_try_has_its_own(house, mail_line):
    mail_line.does = ["451 later", "take"]
    sending = invoice_sending(house, with_link=True)
    go(sending, NOON)
    assert not links(house).get().is_alive(NOON)
    go(sending, NOON + MINUTE)
    (alive,) = [link for link in links(house) if link.is_alive(NOON + MINUTE)]
    assert alive.made_at == NOON + MINUTE
    (taken,) = mail_line.taken
    assert "/bill/" in taken.mail.get_body().get_content()


class Killed(BaseException):
    """The process ends here."""


def test_a_crash_while_the_server_is_spoken_to_leaves_it_going_then_unclear(house, mail_line, monkeypatch):
    def killed(*, mail):
        raise Killed

    sending = queue(house)
    with monkeypatch.context() as crash, pytest.raises(Killed):
        crash.setattr(service, "hand_to_mail_server", killed)
        go(sending, NOON)
    sending.refresh_from_db()
    assert sending.state == "going"
    assert go(sending, NOON + MINUTE) is None
    assert sweep_sendings(scope=house.scope, at=NOON + 11 * MINUTE).unclear == 1
    sending.refresh_from_db()
    assert (sending.state, mail_line.came) == ("unclear", 0)


def test_a_slow_try_that_comes_back_late_tells_what_is_true(house, mail_line, monkeypatch):
    def slow(*, mail):
        sweep_sendings(scope=house.scope, at=NOON + 11 * MINUTE)
        return "250 taken after all"

    monkeypatch.setattr(service, "hand_to_mail_server", slow)
    row = go(queue(house), NOON, NOON + 13 * MINUTE)
    assert row.handed_over_at == NOON + 13 * MINUTE
    assert [state for state, _ in log(row)] == ["going", "unclear", "handed_over"]
    assert row.state == "handed_over"


def test_a_late_answer_does_not_undo_that_a_person_sent_it_again(house, mail_line, monkeypatch):
    def slow(*, mail):
        sweep_sendings(scope=house.scope, at=NOON + 11 * MINUTE)
        send_again(sending=Sending.objects.within(house.scope).get(), at=NOON + 12 * MINUTE, by=house.owner)
        return "250 taken after all"

    monkeypatch.setattr(service, "hand_to_mail_server", slow)
    row = go(queue(house), NOON, NOON + 13 * MINUTE)
    assert row.state == "queued"
    assert log(row)[-1] == ("handed_over", "250 taken after all")


@pytest.fixture
def by_hand(monkeypatch):
    """The job of what is queued is started by the test."""
    monkeypatch.setattr(queue_service, "enqueue", lambda job, **ids: None)


@pytest.mark.usefixtures("by_hand")
@pytest.mark.django_db(transaction=True)
def test_that_it_is_going_is_committed_before_the_server_has_the_mail(mail_line, monkeypatch, tmp_path):
    """Two workers with the same job: the second finds it going while the first is still speaking to the server."""
    house = make_house()
    sending = queue(house)
    hands = ManyHands(tmp_path, monkeypatch)
    mail_line.pause = Event()

    def first():
        return go(sending, NOON)

    def second():
        assert mail_line.reached_text.wait(20)
        seen = row_state(sending), go(sending, NOON)
        mail_line.pause.set()
        return seen

    sent, seen = hands(lambda worker: worker(), [first, second])
    assert seen == ("going", None)
    assert sent.state == "handed_over"
    assert len(mail_line.taken) == 1


def row_state(sending):
    return Sending.objects.within(sending.scope).get(pk=sending.pk).state


@pytest.mark.usefixtures("by_hand")
@pytest.mark.django_db(transaction=True)
def test_of_four_workers_at_the_same_moment_one_sends(mail_line, monkeypatch, tmp_path):
    house = make_house()
    sending = queue(house, invoice=issued_row(house), attachment=None)
    done = ManyHands(tmp_path, monkeypatch)(lambda _: go(sending, NOON), range(4))
    assert sorted(row.state if row else "" for row in done) == ["", "", "", "handed_over"]
    assert len(mail_line.taken) == 1


def test_a_mail_whose_farm_is_erased_while_it_goes_is_put_down_nowhere(house, mail_line):
    def at():
        if mail_line.taken:
            forget_sendings(farm=house.farm)
        return NOON

    assert hand_over_sending(sending=queue(house), clock=at) is not None
    assert len(mail_line.taken) == 1
    assert not Sending.objects.within(house.scope).exists()

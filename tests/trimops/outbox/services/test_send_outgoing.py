"""A message goes at least once, with one number at each try; one that may not have gone never looks as if it had."""

from datetime import timedelta
from threading import Event

import pytest

from tests.factories import NOON, make_house
from tests.many_hands import ManyHands
from tests.services.processes import free_port
from tests.trimops.outbox.messages import go, in_state, log, now, put
from trimops.errands.only_one import only_one
from trimops.outbox.domain.outgoing_states import Channel
from trimops.outbox.models import Outgoing
from trimops.outbox.senders.ready import Part, Refused
from trimops.outbox.senders.senders import SENDERS
from trimops.outbox.services.forget_outgoing import forget_outgoing
from trimops.outbox.services.leave_outgoing import leave_outgoing
from trimops.outbox.services.send_outgoing import STOPPED, look_again, send_outgoing

MINUTE = timedelta(minutes=1)


def test_what_is_taken_went_in_the_servers_words(house, mail_line):
    row = put(house, parts=[Part("a.pdf", "application/pdf", b"%PDF")])
    assert go(row, NOON) == "went"
    row = now(row)
    assert (row.went_at, row.last_words, row.may_have_gone) == (NOON, "250 2.0.0 taken as Q1", False)
    assert log(row)[1:] == [("going", "Try 1"), ("went", "250 2.0.0 taken as Q1")]
    (taken,) = mail_line.taken
    assert [part.get_filename() for part in taken.mail.iter_attachments()] == ["a.pdf"]


def test_a_secret_goes_along_and_lies_here_no_longer(house, mail_line):
    row = put(house, body="Open {secret} today.", secret="https://here.example/abc")
    go(row, NOON)
    assert "Open https://here.example/abc today." in mail_line.taken[0].mail.get_body().get_content()
    assert (now(row).secret, now(row).body) == ("", "Open {secret} today.")


def test_braces_of_somebody_who_has_no_secret_stay_as_they_were_written(house, mail_line):
    go(put(house, body="Write {secret} so."), NOON)
    assert "Write {secret} so." in mail_line.taken[0].mail.get_body().get_content()


def test_a_person_the_server_does_not_know_is_not_tried_again(house, mail_line):
    mail_line.does = ["rcpt 550 5.1.1 no such person here"]
    row = put(house, body="{secret}", secret="s")
    assert go(row, NOON) == "failed"
    assert (now(row).next_try_at, now(row).went_at, now(row).secret) == (None, None, "")
    assert now(row).last_words == "550 5.1.1 no such person here"
    assert go(row, NOON + timedelta(days=1)) is None
    assert mail_line.came == 1


def test_what_is_refused_for_now_is_tried_again_when_its_time_has_come(house, mail_line):
    mail_line.does = ["451 4.3.0 short of disk", "take"]
    row = put(house, body="{secret}", secret="s")
    assert go(row, NOON) == NOON + MINUTE
    assert (now(row).state, now(row).next_try_at, now(row).secret) == ("waiting", NOON + MINUTE, "s")
    assert go(row, NOON + MINUTE / 2) == NOON + MINUTE
    assert go(row, NOON + MINUTE) == "went"
    assert (now(row).tries, now(row).next_try_at) == (2, None)
    assert [state for state, _ in log(row)] == ["waiting", "going", "waiting", "going", "went"]
    assert len(mail_line.taken) == 1


def test_after_six_tries_in_vain_it_is_for_a_person_to_look_at(house, mail_line):
    mail_line.does = ["451 later"]
    row, at, waits = put(house), NOON, []
    while (later := go(row, at)) != "failed":
        waits.append((later - at) / MINUTE)
        at = later
    assert waits == [1, 5, 30, 120, 480]
    assert (now(row).state, now(row).tries, now(row).last_words) == ("failed", 6, "451 later")


def test_while_no_server_is_found_the_others_wait_a_minute_where_they_are(house, mail_line, settings):
    port, settings.EMAIL_PORT = settings.EMAIL_PORT, free_port()
    first, second = put(house), put(house)
    assert go(first, NOON) == NOON + MINUTE
    assert now(first).last_words.startswith("No mail server at 127.0.0.1: ")
    settings.EMAIL_PORT = port
    assert go(second, NOON) == NOON + MINUTE
    assert (now(second).state, now(second).tries, mail_line.came) == ("waiting", 0, 0)
    look_again(Channel.MAIL)
    assert go(second, NOON) == "went"


def test_one_whose_line_broke_after_the_text_goes_again_with_the_same_number(house, mail_line):
    mail_line.does = ["take and hang up", "take"]
    row = put(house)
    later = go(row, NOON)
    assert (now(row).state, now(row).may_have_gone, later) == ("waiting", True, NOON + MINUTE)
    assert now(row).last_words.startswith("The line broke while the mail was handed over: ")
    assert go(row, later) == "went"
    first, second = (taken.mail["Message-ID"] for taken in mail_line.taken)
    assert first == second == f"<{row.key}@localhost>"


def test_a_line_that_breaks_each_time_ends_as_not_known_rather_than_went(house, mail_line):
    mail_line.does = ["hang up"]
    row, at = put(house), NOON
    while (later := go(row, at)) != "failed":
        at = later
    assert (now(row).state, now(row).may_have_gone, now(row).went_at) == ("failed", True, None)


def test_the_same_errand_run_twice_sends_once(house, mail_line):
    row = put(house)
    assert go(row, NOON) == "went"
    assert go(row, NOON) is None
    assert len(mail_line.taken) == 1


def test_it_does_not_go_in_quiet_hours_and_not_when_it_is_of_no_use_any_more(house, mail_line):
    row = put(house, not_before=NOON + MINUTE, worthless_after=NOON + 5 * MINUTE, body="{secret}", secret="s")
    assert go(row, NOON) == NOON + MINUTE
    mail_line.does = ["451 later"]
    assert go(row, NOON + 4.5 * MINUTE) == NOON + 5 * MINUTE, "not later than it lapses"
    assert go(row, NOON + 5 * MINUTE) is None
    assert (now(row).state, now(row).secret, mail_line.came) == ("lapsed", "", 1)


def test_what_a_person_left_does_not_go(house, mail_line):
    row = put(house)
    leave_outgoing(outgoing=row, at=NOON, by=house.owner)
    assert go(row, NOON) is None
    assert mail_line.came == 0


def test_a_mail_that_cannot_be_made_says_why_and_speaks_to_nobody(house, mail_line):
    row = put(house, address="two@example.invalid, three@example.invalid")
    assert go(row, NOON) == "failed"
    assert now(row).last_words == "“two@example.invalid, three@example.invalid” is no e-mail address."
    assert mail_line.came == 0


def test_a_fault_of_a_sender_is_kept_and_tried_again(house, monkeypatch, caplog):
    def broken(ready):
        raise KeyError("no such gateway")

    monkeypatch.setitem(SENDERS, Channel.SMS, broken)
    row = put(house, channel=Channel.SMS, address="07700 900123")
    assert go(row, NOON) == NOON + MINUTE
    assert (now(row).state, now(row).last_words) == ("waiting", "KeyError: 'no such gateway'")
    assert "no such gateway" in caplog.text


def test_one_way_that_is_away_holds_up_no_other(house, mail_line, settings, monkeypatch):
    settings.EMAIL_PORT = free_port()
    go(put(house), NOON)
    monkeypatch.setitem(SENDERS, Channel.SMS, lambda ready: f"sent to {ready.address}")
    row = put(house, channel=Channel.SMS, address="07700 900123")
    assert go(row, NOON) == "went"
    assert now(row).last_words == "sent to 07700 900123"


class Killed(BaseException):
    """The process ends here."""


def killed(ready):
    raise Killed


def test_what_was_going_when_its_process_died_goes_again_and_says_so(house, mail_line, monkeypatch):
    row = put(house)
    with monkeypatch.context() as crash, pytest.raises(Killed):
        crash.setitem(SENDERS, Channel.MAIL, killed)
        go(row, NOON)
    assert now(row).state == "going"
    assert go(row, NOON + MINUTE) == "went"
    assert (now(row).tries, now(row).may_have_gone) == (2, True)
    assert ("waiting", STOPPED) in log(row)


def test_what_kills_the_process_each_time_is_for_a_person_to_look_at(house, monkeypatch):
    monkeypatch.setitem(SENDERS, Channel.MAIL, killed)
    row = put(house)
    for _ in range(6):
        with pytest.raises(Killed):
            go(row, NOON)
    assert go(row, NOON) is None
    assert (now(row).state, now(row).last_words) == ("failed", STOPPED)


def test_while_somebody_is_at_it_the_others_come_again(house, mail_line):
    row = in_state(house, "going")
    with only_one(f"outgoing {row.pk}"):
        assert go(row, NOON) == NOON + timedelta(seconds=5)
    assert mail_line.came == 0


@pytest.mark.django_db(transaction=True)
def test_that_it_is_going_is_committed_before_the_server_has_the_mail(mail_line, monkeypatch, tmp_path):
    """Two workers with the same errand: the second finds it taken while the first is still speaking to the server."""
    house = make_house()
    row = put(house, not_before=NOON)
    hands = ManyHands(tmp_path, monkeypatch)
    assert hands(lambda _: now(row).state, [0]) == ["waiting"]
    mail_line.pause = Event()

    def first():
        return go(row, NOON)

    def second():
        assert mail_line.reached_text.wait(20)
        seen = now(row).state, go(row, NOON)
        mail_line.pause.set()
        return seen

    sent, seen = hands(lambda worker: worker(), [first, second])
    assert seen == ("going", NOON + timedelta(seconds=5))
    assert sent == "went"
    assert len(mail_line.taken) == 1


@pytest.mark.django_db(transaction=True)
def test_of_four_workers_at_the_same_moment_one_sends(mail_line, monkeypatch, tmp_path):
    row = put(make_house(), not_before=NOON)
    hands = ManyHands(tmp_path, monkeypatch)
    # Alone first: the file's journal is set up by whoever opens it first, and no two can.
    assert hands(lambda _: now(row).state, [0]) == ["waiting"]
    done = hands(lambda _: go(row, NOON), range(4))
    assert done.count("went") == 1
    assert len(mail_line.taken) == 1


def test_one_whose_farm_is_erased_while_it_goes_is_put_down_nowhere(house, mail_line):
    row = put(house, farm_id=house.farm.pk)

    def clock():
        if mail_line.taken:
            forget_outgoing(scope=house.scope, farm_id=house.farm.pk)
        return NOON

    send_outgoing(outgoing_id=row.pk, clock=clock)
    assert len(mail_line.taken) == 1
    assert not Outgoing.objects.within(house.scope).exists()
    assert go(row, NOON) is None


def test_one_that_is_refused_by_its_sender_for_good_is_not_tried_again(house, monkeypatch):
    def refuses(ready):
        raise Refused("no number", for_good=True)

    monkeypatch.setitem(SENDERS, Channel.SMS, refuses)
    assert go(put(house, channel=Channel.SMS, address="x"), NOON) == "failed"


@pytest.mark.parametrize("state", ["went", "left"])
def test_a_late_word_of_failure_takes_nothing_back(house, monkeypatch, state):
    """The line to the database broke, and the lock with it: another worker, or a person, was quicker."""

    def overtaken(ready):
        Outgoing.objects.within(house.scope).filter(key=ready.key).update(state=state)
        raise Refused("451 later")

    monkeypatch.setitem(SENDERS, Channel.SMS, overtaken)
    row = put(house, channel=Channel.SMS, address="07700 900123")
    assert go(row, NOON) == state
    assert (now(row).state, now(row).next_try_at) == (state, None)


def test_a_cache_that_is_away_loses_no_word_of_what_came_of_a_message(house, mail_line, settings, caplog):
    refused = f"redis://127.0.0.1:{free_port()}/0"
    settings.CACHES = {
        "default": {"BACKEND": "django.core.cache.backends.redis.RedisCache", "LOCATION": refused}
    }
    row = put(house)
    assert go(row, NOON) == "went"
    settings.EMAIL_PORT = free_port()
    lost = put(house)
    assert go(lost, NOON) == NOON + MINUTE
    assert (now(lost).state, now(lost).may_have_gone) == ("waiting", False)
    assert "not noted that mail is away" in caplog.text

from datetime import timedelta

from django.core.management import call_command
from django.utils import timezone

from tests.factories import NOON, make_house
from tests.trimops.outbox.messages import in_state, now, put
from trimops.outbox.domain.outgoing_states import Topic
from trimops.outbox.services import try_waiting as service
from trimops.outbox.services.try_waiting import try_waiting

MINUTE = timedelta(minutes=1)


def tried(house, hooks, **asked):
    with hooks(execute=True):
        return try_waiting(scope=house.scope, at=timezone.now(), **asked)


def test_all_that_waits_is_tried_also_what_was_to_be_tried_later(
    house, django_capture_on_commit_callbacks, mailoutbox
):
    later = in_state(house, "waiting", tries=5, next_try_at=timezone.now() + 480 * MINUTE)
    first = put(house)
    assert tried(house, django_capture_on_commit_callbacks) == 2
    assert {now(later).state, now(first).state} == {"went"}
    assert len(mailoutbox) == 2
    assert tried(house, django_capture_on_commit_callbacks) == 0


def test_by_the_timetable_what_is_to_be_tried_later_waits(
    house, django_capture_on_commit_callbacks, mailoutbox
):
    later = in_state(house, "waiting", tries=1, next_try_at=timezone.now() + 5 * MINUTE)
    assert tried(house, django_capture_on_commit_callbacks, all_now=False) == 0
    assert now(later).state == "waiting"


def test_nobody_is_told_in_quiet_hours_by_a_press(house, django_capture_on_commit_callbacks, mailoutbox):
    put(house, not_before=timezone.now() + 60 * MINUTE)
    assert tried(house, django_capture_on_commit_callbacks) == 0
    assert not mailoutbox


def test_nothing_is_begun_that_a_person_must_look_at(house, django_capture_on_commit_callbacks, mailoutbox):
    for state in ("going", "went", "failed", "lapsed", "left"):
        in_state(house, state)
    assert tried(house, django_capture_on_commit_callbacks) == 0
    assert not mailoutbox


def test_only_what_the_person_may_see(house, django_capture_on_commit_callbacks, mailoutbox):
    bill, visit = put(house, topic=Topic.INVOICE), put(house)
    assert tried(house, django_capture_on_commit_callbacks, topics=frozenset({Topic.VISIT})) == 1
    assert (now(bill).state, now(visit).state) == ("waiting", "went")


def test_so_many_at_once_the_oldest_first(house, django_capture_on_commit_callbacks, mailoutbox, monkeypatch):
    monkeypatch.setattr(service, "AT_ONCE", 2)
    new, old, older = (put(house, at=NOON - days * timedelta(days=1)) for days in range(3))
    assert tried(house, django_capture_on_commit_callbacks) == 2
    assert [now(row).state for row in (older, old, new)] == ["went", "went", "waiting"]


def test_another_businesss_message_is_left_alone(house, django_capture_on_commit_callbacks, mailoutbox):
    theirs = put(make_house("Far Side"))
    assert tried(house, django_capture_on_commit_callbacks) == 0
    assert now(theirs).state == "waiting"


def test_the_command_tries_what_waits(house, capsys, django_capture_on_commit_callbacks, mailoutbox):
    put(house)
    with django_capture_on_commit_callbacks(execute=True):
        call_command("send_waiting", "--all")
    assert capsys.readouterr().out == "Ash & Rye Foot Trimming: 1 tried\n"
    assert len(mailoutbox) == 1

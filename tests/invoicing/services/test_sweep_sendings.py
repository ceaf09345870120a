from datetime import timedelta

from invoicing.models import Sending
from invoicing.selectors.sending_rows import log_of
from invoicing.services import sweep_sendings as service
from invoicing.services.sweep_sendings import LOST, Swept, sweep_sendings
from tests.factories import NOON, make_house
from tests.invoicing.services.test_queue_sending import queue

MINUTE = timedelta(minutes=1)


def put(house, **columns):
    sending = queue(house)
    Sending.objects.within(house.scope).filter(pk=sending.pk).update(**columns)
    return sending


def sweep(house, at, hooks, **asked):
    with hooks(execute=True):
        return sweep_sendings(scope=house.scope, at=at, **asked)


def state(sending):
    sending.refresh_from_db()
    return sending.state


def test_a_job_that_was_lost_is_started_anew(house, django_capture_on_commit_callbacks, mailoutbox):
    sending = queue(house)
    assert sweep(house, NOON + MINUTE, django_capture_on_commit_callbacks) == Swept(0, 0)
    assert sweep(house, NOON + 2 * MINUTE, django_capture_on_commit_callbacks) == Swept(1, 0)
    assert (state(sending), len(mailoutbox)) == ("handed_over", 1)
    assert sweep(house, NOON + 9 * MINUTE, django_capture_on_commit_callbacks) == Swept(0, 0)


def test_what_is_to_be_tried_again_waits_for_its_time(house, django_capture_on_commit_callbacks, mailoutbox):
    sending = put(house, state="failed", tries=1, next_try_at=NOON + MINUTE)
    assert sweep(house, NOON, django_capture_on_commit_callbacks) == Swept(0, 0)
    assert sweep(house, NOON + MINUTE, django_capture_on_commit_callbacks) == Swept(1, 0)
    assert (state(sending), sending.tries) == ("handed_over", 2)


def test_a_person_may_have_all_tried_now(house, django_capture_on_commit_callbacks, mailoutbox):
    put(house, state="failed", tries=5, next_try_at=NOON + 480 * MINUTE)
    queue(house)
    assert sweep(house, NOON, django_capture_on_commit_callbacks, all_now=True) == Swept(2, 0)
    assert len(mailoutbox) == 2


def test_nothing_is_started_that_a_person_must_look_at(house, django_capture_on_commit_callbacks, mailoutbox):
    for columns in ({"state": "failed"}, {"state": "unclear"}, {"state": "handed_over"}, {"left_at": NOON}):
        put(house, **columns)
    later = NOON + timedelta(days=9)
    assert sweep(house, later, django_capture_on_commit_callbacks, all_now=True) == Swept(0, 0)
    assert not mailoutbox


def test_what_went_quiet_for_ten_minutes_is_unclear(house, django_capture_on_commit_callbacks, mailoutbox):
    sending = put(house, state="going", began_at=NOON)
    assert sweep(house, NOON + 10 * MINUTE, django_capture_on_commit_callbacks) == Swept(0, 0)
    assert sweep(house, NOON + 11 * MINUTE, django_capture_on_commit_callbacks) == Swept(0, 1)
    assert (state(sending), sending.last_words) == ("unclear", LOST)
    assert log_of(sending)[-1].words == LOST
    assert not mailoutbox


def test_so_many_at_once_the_oldest_first(house, django_capture_on_commit_callbacks, mailoutbox, monkeypatch):
    monkeypatch.setattr(service, "AT_ONCE", 2)
    new, old, older = (put(house, queued_at=NOON - days * timedelta(days=1)) for days in range(3))
    assert sweep(house, NOON + 9 * MINUTE, django_capture_on_commit_callbacks) == Swept(2, 0)
    assert [state(row) for row in (older, old, new)] == ["handed_over", "handed_over", "queued"]


def test_another_businesss_mail_is_left_alone(house, django_capture_on_commit_callbacks, mailoutbox):
    theirs = queue(make_house("Far Side"))
    assert sweep(house, NOON + 9 * MINUTE, django_capture_on_commit_callbacks, all_now=True) == Swept(0, 0)
    assert state(theirs) == "queued"

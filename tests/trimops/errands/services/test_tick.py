"""Every few seconds what is due is handed out, whoever lost it."""

from datetime import timedelta

import pytest
from django.utils import timezone

from tests.factories import make_business
from tests.trimops.errands.errand_hands import all_errands, left_waiting, now_of, set_work, written
from trimops.errands.only_one import only_one
from trimops.errands.services import tick as ticking
from trimops.errands.services.tick import DEAD_AFTER, LOST_AFTER, tick
from trimops.watch.timetable import last_beat

pytestmark = pytest.mark.django_db(transaction=True)


@pytest.fixture
def calls(monkeypatch):
    return set_work(monkeypatch, lambda time: None)


def test_what_is_due_is_done_and_what_is_not_waits(calls):
    now = timezone.now()
    business = make_business()
    due = left_waiting(business, now - timedelta(seconds=1), visit_id=1)
    later = left_waiting(business, now + timedelta(minutes=1), visit_id=2)
    assert tick(now=now) == 1
    assert (now_of(due).state, now_of(later).state, calls) == ("done", "waiting", [{"visit_id": 1}])
    assert tick(now=now + timedelta(minutes=1)) == 1


def test_a_second_tick_at_the_same_time_does_nothing(calls):
    left_waiting()
    with only_one("tick"):
        assert tick(now=timezone.now() + timedelta(seconds=5)) == 0
    assert calls == []


def test_the_oldest_go_first_and_no_more_than_so_many_at_once(calls, monkeypatch):
    monkeypatch.setattr(ticking, "MOST_AT_ONCE", 3)
    business, now = make_business(), timezone.now()
    for minutes in (5, 1, 4, 2, 3):
        left_waiting(business, now - timedelta(minutes=minutes), visit_id=minutes)
    assert [tick(now=now) for _ in range(3)] == [3, 2, 0]
    assert [call["visit_id"] for call in calls] == [5, 4, 3, 2, 1]


def test_what_was_handed_out_and_lost_is_handed_out_again(calls):
    now = timezone.now()
    lost = written(handed_out_at=now - LOST_AFTER - timedelta(seconds=1))
    under_its_way = written(handed_out_at=now - timedelta(seconds=1))
    assert tick(now=now) == 1
    assert (now_of(lost).state, now_of(under_its_way).state) == ("done", "waiting")


def test_what_somebody_left_under_way_and_died_is_done_anew(calls):
    now = timezone.now()
    dead = written(state="under_way", began_at=now - DEAD_AFTER - timedelta(seconds=1), tries=1)
    tick(now=now)
    row = now_of(dead)
    assert (row.state, row.tries, len(calls)) == ("done", 2, 1)


def test_what_somebody_is_still_at_is_left_to_them(calls):
    now = timezone.now()
    alive = written(state="under_way", began_at=now - timedelta(hours=1), tries=1)
    with only_one(f"errand {alive.pk}"):
        assert tick(now=now) == 0
    assert (now_of(alive).state, calls) == ("under_way", [])


def test_done_and_stuck_ones_stay_so(calls):
    old = timezone.now() - timedelta(hours=1)
    for state in ("done", "stuck"):
        written(state=state, handed_out_at=old, ended_at=old)
    assert tick(now=timezone.now()) == 0
    assert [row.state for row in all_errands()] == ["done", "stuck"]


def test_it_leaves_a_sign_for_who_watches(calls):
    now = timezone.now()
    tick(now=now)
    assert abs(last_beat() - now) < timedelta(seconds=1)


def test_where_no_sign_can_be_left_the_work_goes_on(calls, monkeypatch):
    def broken(at):
        raise OSError("the disk is full")

    monkeypatch.setattr(ticking, "note_beat", broken)
    left_waiting(not_before=timezone.now() - timedelta(seconds=1))
    assert tick(now=timezone.now()) == 1

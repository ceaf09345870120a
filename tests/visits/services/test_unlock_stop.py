"""A lock taken off."""

import pytest

from tests.visits.services.by_hand import hand_week
from tests.visits.services.conftest import SUNDAY_EVENING
from visits.models import PlanLock
from visits.services.lock_stop import LockOn, lock_stop
from visits.services.unlock_stop import unlock_stop


@pytest.fixture
def week(db):
    return hand_week()


def test_the_lock_is_gone_and_the_plan_as_it_was(week):
    visit, other = week.visits[:2]
    for each in (visit, other):
        lock_stop(week_plan=week.plan, visit=each, on=LockOn.DAY, at=SUNDAY_EVENING, by=week.house.owner)
    assert unlock_stop(visit=visit)
    assert [lock.visit for lock in PlanLock.objects.within(week.house.scope)] == [other]
    assert week.spot(visit) is not None


def test_unlocking_what_is_not_locked_changes_nothing(week):
    assert not unlock_stop(visit=week.visits[0])

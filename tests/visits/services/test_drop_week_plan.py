"""A proposal that is not wanted."""

import pytest

from tests.visits.services.changed_week import SEVEN
from visits.models import Visit
from visits.services.accept_week_plan import PlanIsStale
from visits.services.drop_week_plan import drop_week_plan


def test_the_diary_stays_as_it_is(changed):
    plan = changed.planned_again(changed.out())
    before = list(Visit.objects.within(changed.house.scope).values())
    assert drop_week_plan(week_plan=plan, at=SEVEN, by=changed.house.owner).state == "set_aside"
    assert list(Visit.objects.within(changed.house.scope).values()) == before


def test_once_dropped_it_is_open_no_more(changed):
    plan = changed.planned_again(changed.out())
    drop_week_plan(week_plan=plan, at=SEVEN, by=changed.house.owner)
    with pytest.raises(PlanIsStale):
        drop_week_plan(week_plan=plan, at=SEVEN, by=changed.house.owner)

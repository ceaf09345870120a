"""A visit's calendar sequence goes up by one with its time or state, and its hour is remembered when it goes."""

from datetime import timedelta

import pytest

from tests.factories import TUESDAY_TEN, planned
from visits.domain.visit_states import VisitState
from visits.models import Visit
from visits.services.count_for_calendars import count_for_calendars

HOUR = timedelta(hours=1)


@pytest.mark.parametrize(
    ("changes", "is_other"),
    [
        ({}, False),
        ({"note": "Mind the dog", "head_count": 3, "reason": "urgent", "expected_minutes": 5}, False),
        ({"planned_start": TUESDAY_TEN - HOUR}, True),
        ({"planned_finish": TUESDAY_TEN + 5 * HOUR}, True),
        ({"state": VisitState.CONFIRMED.value}, True),
        ({"state": VisitState.CONFIRMED.value, "planned_start": TUESDAY_TEN - HOUR}, True),
        ({"planned_start": None, "planned_finish": None, "van": None}, True),
    ],
)
def test_one_higher_with_time_or_state_and_never_otherwise(
    house, changes, is_other, django_assert_num_queries
):
    visit = planned(house.farm, house.van)
    before = visit.calendar_sequence
    for name, value in changes.items():
        setattr(visit, name, value)
    with django_assert_num_queries(1):
        assert count_for_calendars(visit=visit) is is_other
    assert visit.calendar_sequence == before + is_other


def test_the_hour_that_went_is_remembered(house):
    visit = planned(house.farm, house.van)
    finish = visit.planned_finish
    # As rows are that were written before calendars had to know.
    Visit.objects.within(house.scope).update(last_start=None, last_finish=None, last_van=None)
    visit.van = visit.planned_start = visit.planned_finish = None
    count_for_calendars(visit=visit)
    assert (visit.last_van, visit.last_start, visit.last_finish) == (house.van, TUESDAY_TEN, finish)

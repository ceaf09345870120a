from datetime import date, time, timedelta

import pytest
from django.core.exceptions import ValidationError

from tests.factories import NOON, make_house
from visits.models import DayOff, ShiftPattern, Van
from visits.services.save_van import VanHours, save_van, set_day_off

pytestmark = pytest.mark.django_db
MONDAY = date(2026, 11, 30)


def hours(**changes):
    words = {
        "weekdays": [0, 2],
        "starts": time(7),
        "ends": time(17),
        "max_work_minutes": 540,
        "max_cows": 50,
        "meal_minutes": 30,
        "meal_earliest": time(12),
        "meal_latest": time(14),
    }
    return VanHours(**{**words, **changes})


@pytest.fixture
def van():
    return make_house().van


def test_the_hours_given_replace_those_before(van):
    save_van(van=van, hours=hours(), at=NOON)
    rows = ShiftPattern.objects.within(van.scope).filter(van=van)
    assert [(row.weekday, row.starts, row.max_cows) for row in rows] == [(0, time(7), 50), (2, time(7), 50)]


def test_hours_that_make_no_sense_change_nothing(van):
    save_van(van=van, hours=hours(), at=NOON)
    with pytest.raises(ValidationError):
        save_van(van=van, hours=hours(ends=time(6)), at=NOON)
    assert ShiftPattern.objects.within(van.scope).filter(van=van).count() == 2


def test_a_day_off_twice_is_one_day_off_and_can_be_taken_back(van):
    for _ in range(2):
        set_day_off(van=van, day=MONDAY, reason="Wedding", is_off=True, at=NOON)
    assert DayOff.objects.within(van.scope).filter(van=van).count() == 1
    set_day_off(van=van, day=MONDAY, reason="", is_off=False, at=NOON)
    assert not DayOff.objects.within(van.scope).filter(van=van).exists()


def test_since_when_calendars_show_its_name_is_kept_with_the_name_alone(van):
    later = NOON + timedelta(hours=1)
    save_van(van=van, hours=hours(), at=NOON)
    assert van.shown_since is None
    van.name = "Van 7"
    save_van(van=van, hours=hours(), at=later)
    save_van(van=van, hours=hours(max_cows=40), at=later + timedelta(hours=1))
    assert Van.objects.within(van.scope).get(pk=van.pk).shown_since == later


def test_a_day_off_says_when_it_was_noted(van):
    set_day_off(van=van, day=MONDAY, reason="Wedding", is_off=True, at=NOON)
    assert DayOff.objects.within(van.scope).get().noted_at == NOON

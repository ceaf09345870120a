from datetime import datetime, timedelta

import pytest

from tests.visits.documents.ribbon_days import EMPTY_DAY, FULL_DAY, LONDON, at
from visits.documents.day_ribbon_content import DayRibbon, RibbonVisit, TimeScale


def test_free_time_is_what_lies_between_the_events():
    assert list(FULL_DAY.idle()) == [(at(13, 55), at(14, 15))]
    assert list(EMPTY_DAY.idle()) == []


def test_short_gaps_are_no_free_time():
    assert (at(8, 25), at(8, 30)) in list(FULL_DAY.idle(timedelta(minutes=5)))


def test_milkings_are_shown_only_in_the_part_of_the_day_that_is_about_their_farm():
    assert list(FULL_DAY.milkings()) == [(at(7), at(8, 30)), (at(15, 30), at(18))]


def test_milkings_of_two_farms_do_not_run_into_each_other():
    milking = ((at(12), at(14)),)
    visits = (
        RibbonVisit("A", at(9), at(12), 1, 0, milking=milking),
        RibbonVisit("B", at(13), at(15), 1, 0, milking=milking),
    )
    day = DayRibbon("t", at(7), at(18), (), visits)
    assert list(day.milkings()) == [(at(12), at(13)), (at(12), at(14))]


def test_time_lies_along_the_scale_in_proportion_and_never_off_it():
    scale = TimeScale(at(8), at(12), 10, 50)
    assert [scale.at(at(8)), scale.at(at(9)), scale.at(at(12))] == [10, 20, 50]
    assert [scale.at(at(6)), scale.at(at(20))] == [10, 50]


@pytest.mark.parametrize(("day", "count"), [((2026, 10, 25), 25), ((2027, 3, 28), 23), ((2027, 3, 29), 24)])
def test_a_day_with_a_change_of_the_clock_has_its_real_hours(day, count):
    """Both changes of 2026/27 in Great Britain (IANA tzdata)."""
    begins = datetime(*day, tzinfo=LONDON)
    hours = list(TimeScale(begins, begins + timedelta(days=1), 0, count).hours())
    assert len(hours) == count + 1
    assert [along for _, along in hours] == pytest.approx(list(range(count + 1)))
    assert (hours[0][0].hour, hours[-1][0].hour) == (0, 0)

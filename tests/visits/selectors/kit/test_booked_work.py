"""The visits still to come."""

from datetime import timedelta

from tests.factories import (
    TUESDAY_TEN,
    finished,
    make_house,
    make_user,
    make_van,
    planned,
    put_down,
    trimmed_foot,
    under_way,
    wanted,
)
from visits.domain.kit.forecast.visit_use import BookedVisit
from visits.domain.visit_states import VisitReason
from visits.selectors.kit.booked_work import booked_work

TUESDAY = TUESDAY_TEN.date()


def booked(house, days=6):
    return booked_work(house.scope, TUESDAY, TUESDAY + timedelta(days=days), house.business.zone)


def test_what_is_in_the_diary_and_not_over_is_told_with_its_van(house, django_assert_num_queries):
    finished(house.farm, house.van)
    wanted(house.farm)
    van = make_van(house.business, make_user(), "Van 2")
    planned(house.farm, van, TUESDAY_TEN + timedelta(days=3), head_count=20, corrective_count=4)
    planned(house.farm, van, TUESDAY_TEN + timedelta(days=7))
    with django_assert_num_queries(1):
        found = booked(house)
    day = TUESDAY + timedelta(days=3)
    assert found == [BookedVisit(house.farm.pk, day, van.pk, 20, 4, VisitReason.ROUTINE)]
    assert booked(make_house("Far")) == []


def test_of_a_visit_under_way_the_cows_still_to_come_are_told(house):
    visit = under_way(house.farm, house.van, head_count=3, corrective_count=3)
    put_down(visit, house.cow, trimmed_foot())
    (told,) = booked(house)
    assert (told.heads, told.corrective) == (2, 2)

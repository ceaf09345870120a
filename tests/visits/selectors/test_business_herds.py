"""The other herds of a business, as counts."""

from datetime import date, timedelta

from tests.factories import (
    TUESDAY_TEN,
    blocked_foot,
    make_cow,
    make_farm,
    put_down,
    trimmed_foot,
    under_way,
)
from visits.domain.herd.shrunken_rates import HerdCount
from visits.domain.lesions import LesionCode
from visits.domain.visit_states import VisitReason
from visits.selectors.business_herds import business_herds

TODAY = date(2026, 3, 20)


def trimmed_herd(house, name, lame, clean, herd_size=None, farm=None, at=TUESDAY_TEN, **wish):
    """A farm whose cows were all at one visit, the first `lame` of them with an ulcer."""
    size = herd_size or lame + clean
    farm = farm or make_farm(house.business, name, by=house.owner, herd_size=size)
    visit = under_way(farm, house.van, at, **wish)
    for number in range(lame + clean):
        foot = blocked_foot() if number < lame else trimmed_foot()
        put_down(visit, make_cow(farm, f"{number}"), foot)
    return visit


def test_each_other_herd_is_a_count_of_its_newest_whole_round(house):
    trimmed_herd(house, "High Croft", 2, 2)
    trimmed_herd(house, "Far Croft", 1, 2, at=TUESDAY_TEN + timedelta(hours=4))
    found = business_herds(house.farm, TODAY)
    assert sorted(found.counts[None], key=lambda each: each.seen) == [HerdCount(1, 3), HerdCount(2, 4)]
    assert sum(each.cows for each in found.counts[LesionCode.U]) == 3
    assert sum(each.cows for each in found.counts[LesionCode.DD]) == 0
    assert found.herds == 2


def test_the_herd_itself_and_picked_cows_are_not_among_them(house):
    trimmed_herd(house, "", 2, 2, farm=house.farm)
    trimmed_herd(house, "High Croft", 1, 2, herd_size=40, at=TUESDAY_TEN + timedelta(hours=4))
    trimmed_herd(house, "Far Croft", 1, 2, at=TUESDAY_TEN + timedelta(hours=8), reason=VisitReason.URGENT)
    assert business_herds(house.farm, TODAY).herds == 0


def test_rounds_of_more_than_a_year_ago_and_to_come_do_not_count(house):
    trimmed_herd(house, "High Croft", 1, 2)
    assert business_herds(house.farm, date(2026, 3, 2)).herds == 0
    assert business_herds(house.farm, date(2027, 3, 10)).herds == 0


def test_one_query_reads_them_all(house, django_assert_num_queries):
    trimmed_herd(house, "High Croft", 1, 2)
    trimmed_herd(house, "Far Croft", 1, 2, at=TUESDAY_TEN + timedelta(hours=4))
    with django_assert_num_queries(1):
        business_herds(house.farm, TODAY)

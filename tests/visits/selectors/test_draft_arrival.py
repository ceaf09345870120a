from tests.factories import NOON, TUESDAY_TEN, make_farm, planned, wanted
from visits.selectors.day_arrivals import arrival_at
from visits.selectors.draft_content import draft_content


def test_the_draft_list_tells_the_span_of_the_visit_within_its_vans_day(house):
    first = planned(house.farm, house.van, TUESDAY_TEN.replace(hour=8), head_count=6)
    there = make_farm(house.business, "High Croft", by=house.owner, latitude="54.15")
    second = planned(there, house.van, TUESDAY_TEN.replace(hour=11))
    for visit in (first, second):
        span = arrival_at(visit, NOON).arrive
        assert draft_content(visit, NOON).likely == (span.earliest, span.latest)
    assert draft_content(second, NOON).likely[1] > draft_content(first, NOON).likely[1]


def test_a_visit_without_an_hour_has_no_arrival(house):
    visit = wanted(house.farm)
    assert arrival_at(visit, NOON) is None
    assert draft_content(visit, NOON).likely is None

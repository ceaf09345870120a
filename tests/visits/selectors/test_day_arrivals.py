from datetime import UTC, date, datetime, time, timedelta

import pytest

from farms.services.set_milkings import set_milkings
from tests.factories import (
    NOON,
    TUESDAY_TEN,
    confirmed,
    finish,
    make_cow,
    make_farm,
    make_house,
    make_van,
    planned,
    put_down,
    trimmed_foot,
    wanted,
)
from trimops.kernel.clock import at_local
from visits.models import Trim
from visits.selectors.day_arrivals import arrivals_of
from visits.services.call_off_visit import call_off_visit
from visits.services.start_visit import start_visit

DAY = TUESDAY_TEN.date()
EVE = datetime(2026, 3, 2, 18, tzinfo=UTC)


def arrivals(house, now=EVE, **changes):
    return arrivals_of(house.business, changes.get("van", house.van), changes.get("day", DAY), now)


@pytest.fixture
def farms(house):
    return [
        house.farm,
        make_farm(house.business, "High Croft", by=house.owner, latitude="54.15"),
        make_farm(house.business, "Mid Croft", by=house.owner, longitude="-2.5"),
    ]


@pytest.fixture
def day(house, farms):
    """Three planned visits: nine, twelve, two o'clock."""
    starts = [datetime(2026, 3, 3, hour, tzinfo=UTC) for hour in (9, 12, 14)]
    cows = (12, 6, 3)
    return [
        planned(farm, house.van, start, head_count=n)
        for farm, start, n in zip(farms, starts, cows, strict=True)
    ]


def test_a_day_without_visits_has_no_arrivals(house):
    wanted(house.farm)
    assert arrivals(house) is None


def test_each_farm_gets_a_span_about_its_hour_that_widens_as_the_day_goes_on(house, day):
    stops = arrivals(house).stops
    assert [stop.visit for stop in stops] == day
    widths = [stop.arrive.latest - stop.arrive.earliest for stop in stops]
    assert widths[0] < timedelta(minutes=45)
    assert widths[0] < widths[1]
    for stop in stops:
        assert stop.arrive.earliest <= stop.arrive.likely <= stop.arrive.latest < stop.finish.latest
        assert 0 <= stop.in_time <= 1


def test_spans_are_told_in_fives_in_the_business_own_time(house, day):
    span = arrivals(house).stops[1].arrive
    for at in (span.earliest, span.likely, span.latest):
        assert (at.minute % 5, at.second) == (0, 0)
        assert at.utcoffset() == at.astimezone(house.business.zone).utcoffset()


def test_asked_again_the_same_is_told(house, day):
    assert arrivals(house) == arrivals(house)


def test_a_promised_hour_is_not_begun_before(house, farms):
    confirmed(farms[0], house.van, datetime(2026, 3, 3, 9, tzinfo=UTC), head_count=2)
    late = confirmed(farms[1], house.van, datetime(2026, 3, 3, 13, tzinfo=UTC), head_count=2)
    stop = arrivals(house).of(late)
    assert stop.arrive.latest < late.planned_start
    assert stop.finish.earliest > late.planned_start + timedelta(minutes=30)


def test_a_late_finish_moves_the_rest_of_the_day(house, day):
    nine, planned_next = day[0].planned_start, arrivals(house).stops[1]
    visit = start_visit(visit=day[0], checked=True, at=nine, by=house.trimmer)
    late = nine + timedelta(hours=5)
    finish(visit, house.trimmer, late)
    told = arrivals(house, late)
    assert told.stops[0].arrive is None
    assert told.stops[0].finish is None
    assert told.stops[0].in_time is None
    assert told.stops[1].arrive.earliest >= late
    assert told.stops[1].arrive.likely > planned_next.arrive.latest
    assert told.late_minutes >= 120
    before, after = planned_next.arrive, told.stops[1].arrive
    assert after.latest - after.earliest < before.latest - before.earliest


def test_a_visit_under_way_has_no_arrival_and_ends_later_than_now(house, day):
    nine = day[0].planned_start
    start_visit(visit=day[0], checked=True, at=nine, by=house.trimmer)
    now = nine + timedelta(hours=4)
    first = arrivals(house, now).stops[0]
    assert first.arrive is None
    assert first.finish.earliest >= now


def test_cows_done_slowly_make_the_end_later_and_quickly_earlier(house, day):
    visit = start_visit(visit=day[0], checked=True, at=day[0].planned_start, by=house.trimmer)
    ends = {}
    for pace in (3, 25):
        Trim.objects.within(house.scope).delete()
        for number in range(4):
            at = visit.started_at + timedelta(minutes=25 + pace * (number + 1))
            put_down(visit, make_cow(house.farm, f"{pace}-{number}"), trimmed_foot(), at=at)
        ends[pace] = arrivals(house, at).stops[0].finish.likely
    assert ends[25] - ends[3] > timedelta(minutes=90)


def test_a_van_that_has_not_come_by_now_comes_after_now(house, day):
    now = day[0].planned_start + timedelta(hours=1)
    told = arrivals(house, now)
    assert told.stops[0].arrive.earliest >= now
    assert told.late_minutes >= 55


def test_the_chance_to_be_done_falls_as_milking_comes_near(house, farms):
    late = planned(farms[0], house.van, datetime(2026, 3, 3, 13, tzinfo=UTC), head_count=12)
    other = make_van(house.business, house.trimmer, "Van 2")
    early = planned(farms[0], other, datetime(2026, 3, 3, 9, tzinfo=UTC), head_count=12)
    tight, easy = arrivals(house).of(late), arrivals(house, van=other).of(early)
    assert tight.in_time < 0.5 < easy.in_time
    assert tight.is_tight
    assert not easy.is_tight


def test_a_farm_that_does_not_milk_has_no_milking_to_be_done_before(house, farms):
    set_milkings(farm=farms[0], milkings=[])
    visit = planned(farms[0], house.van, TUESDAY_TEN)
    assert arrivals(house).of(visit).in_time is None


def test_called_off_visits_other_vans_and_other_days_are_not_in_it(house, day, farms):
    call_off_visit(visit=day[1], because="Snow", at=NOON, by=house.trimmer)
    van = make_van(house.business, house.trimmer, "Van 2")
    planned(farms[1], van, TUESDAY_TEN)
    planned(farms[2], house.van, TUESDAY_TEN + timedelta(days=1))
    assert [stop.visit for stop in arrivals(house).stops] == [day[0], day[2]]


def test_a_visit_made_on_another_day_than_planned_counts_on_the_day_it_was_made(house, day):
    next_day = day[0].planned_start + timedelta(days=1)
    start_visit(visit=day[0], checked=True, at=next_day, by=house.trimmer)
    assert [stop.visit for stop in arrivals(house, next_day).stops] == day[1:]
    assert [stop.visit for stop in arrivals(house, next_day, day=next_day.date()).stops] == [day[0]]


def test_on_the_day_the_clocks_go_forward_hours_are_the_business_own(house):
    sunday = date(2026, 3, 29)
    van = make_van(house.business, house.trimmer, "Van 2", weekdays=[6])
    ten = at_local(sunday, time(10), house.business.zone)
    visit = planned(house.farm, van, ten, head_count=4)
    stop = arrivals(house, EVE, van=van, day=sunday).of(visit)
    assert abs(stop.arrive.likely - ten) <= timedelta(minutes=20)


def test_no_day_of_another_business_is_told(house, day):
    other = make_house("Elm & Oak")
    assert arrivals_of(other.business, house.van, DAY, EVE) is None


def test_it_takes_a_fixed_number_of_queries(house, day, django_assert_max_num_queries):
    with django_assert_max_num_queries(9):
        arrivals(house)

"""A day's drawings and its list wear the same numbers."""

from datetime import timedelta

import pytest

from tests.factories import TUESDAY_TEN, make_farm, make_house, make_van, wanted
from visits.selectors.day_drawings import day_map, map_of, shift_drawings
from visits.selectors.plan_rows import ShiftView, StopView

DAY = TUESDAY_TEN.date()


@pytest.fixture
def house(db):
    return make_house()


def stop(farm, hours):
    start = TUESDAY_TEN + timedelta(hours=hours)
    return StopView(wanted(farm), start, start + timedelta(hours=1), "", (), 10, 8.0)


def going_out(van, *stops):
    leave, back = stops[0].start - timedelta(minutes=20), stops[-1].finish + timedelta(minutes=20)
    return ShiftView(f"van-{van.pk}-{DAY}", van, DAY, leave, back, leave, back, stops=stops)


def turns(drawn):
    return [stop.turn for stop in drawn.shift.stops]


def test_one_van_numbers_its_farms_in_the_order_of_driving(house):
    other = make_farm(house.business, "High Croft", by=house.owner)
    shift = going_out(house.van, stop(house.farm, 0), stop(other, 2))
    (drawn,) = shift_drawings(DAY, [shift])
    assert turns(drawn) == ["1", "2"]


def test_a_farm_that_two_vans_come_to_wears_one_number_in_list_and_map(house):
    other = make_farm(house.business, "High Croft", by=house.owner)
    second = make_van(house.business, house.trimmer, "Van 2")
    shifts = [
        going_out(house.van, stop(house.farm, 0)),
        going_out(second, stop(house.farm, 0), stop(other, 2)),
    ]
    drawn = shift_drawings(DAY, shifts)
    numbers = map_of(DAY, shifts).numbered()
    assert [turns(each) for each in drawn] == [["A1"], ["A1", "B1"]]
    assert numbers == {f"farm-{house.farm.pk}": "A1", f"farm-{other.pk}": "B1"}
    assert ">B1<" in day_map(DAY, shifts)


def test_a_van_that_stays_in_has_no_ribbon(house):
    van = house.van
    idle = ShiftView(f"van-{van.pk}-{DAY}", van, DAY, TUESDAY_TEN, TUESDAY_TEN + timedelta(hours=9))
    with pytest.raises(ValueError, match="does not go out"):
        shift_drawings(DAY, [idle])

"""The calvings of a cow are kept one by one."""

from datetime import date

from farms.models import Calving
from farms.services.note_calving import note_calving
from tests.factories import make_cow


def calvings_of(cow):
    rows = Calving.objects.within(cow.scope).filter(cow=cow)
    return list(rows.values_list("calved_on", "lactation"))


def test_a_calving_a_year_later_is_one_more(house):
    note_calving(cow=house.cow, calved_on=date(2025, 1, 5), lactation=2)
    note_calving(cow=house.cow, calved_on=date(2026, 2, 1), lactation=3)
    assert calvings_of(house.cow) == [(date(2025, 1, 5), 2), (date(2026, 2, 1), 3)]


def test_a_day_put_right_by_a_week_moves_the_calving_and_keeps_its_number(house):
    note_calving(cow=house.cow, calved_on=date(2025, 1, 5), lactation=2)
    note_calving(cow=house.cow, calved_on=date(2025, 1, 12))
    assert calvings_of(house.cow) == [(date(2025, 1, 12), 2)]


def test_a_number_told_later_is_put_to_the_calving(house):
    note_calving(cow=house.cow, calved_on=date(2025, 1, 5))
    note_calving(cow=house.cow, calved_on=date(2025, 1, 5), lactation=4)
    assert calvings_of(house.cow) == [(date(2025, 1, 5), 4)]


def test_the_calvings_of_another_cow_are_left_alone(house):
    other = make_cow(house.farm, "102", calved_on=date(2025, 1, 6))
    note_calving(cow=house.cow, calved_on=date(2025, 1, 12))
    assert calvings_of(other) == [(date(2025, 1, 6), None)]

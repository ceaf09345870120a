"""The van is back."""

from datetime import timedelta

from tests.factories import MONDAY, NOON, wanted
from tests.visits.services.changed_week import at
from visits.models import OutBecause, VanOut
from visits.selectors.week_problem import week_problem
from visits.services.end_van_out import end_van_out
from visits.services.note_what_happened import OutWord, note_what_happened


def out(house, since, until):
    note_what_happened(happening=OutWord(house.van, OutBecause.CRUSH, since, until), at=NOON, by=house.owner)
    return VanOut.objects.within(house.scope).get()


def days_of(house):
    wanted(house.farm)
    return [shift["id"][-10:] for shift in week_problem(house.business, MONDAY, NOON)["shifts"]]


def test_from_then_on_the_van_goes_out_again(house):
    row = end_van_out(van_out=out(house, at(3, 6), at(6, 20)), at=at(4, 20), by=house.owner)
    assert (row.until, row.calendar_sequence) == (at(4, 20), 1)
    assert days_of(house) == ["2026-03-05", "2026-03-06"]


def test_what_has_not_begun_never_was(house):
    assert end_van_out(van_out=out(house, at(4, 6), at(6, 20)), at=at(3, 8), by=house.owner) is None
    assert not VanOut.objects.within(house.scope).exists()


def test_what_is_over_stays_as_it_was(house):
    made = out(house, at(3, 6), at(3, 20))
    assert end_van_out(van_out=made, at=at(3, 20) + timedelta(hours=1), by=house.owner).until == at(3, 20)

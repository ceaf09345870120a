from datetime import date

from farms.domain.cow_status import CowStatus
from farms.domain.herd_list import HerdRow
from farms.domain.known_cow import FieldChange, KnownCow, changes_to

COW = KnownCow(1, "5", "UK123450600001", status=CowStatus.MILKING, calved_on=date(2026, 1, 5))


def test_empty_cells_change_nothing():
    assert changes_to(HerdRow(2, "5"), COW) == ()


def test_each_difference_is_told_before_and_after():
    row = HerdRow(2, "55", "UK123450600001", status=CowStatus.DRY, calved_on=date(2026, 1, 5))
    assert changes_to(row, COW) == (FieldChange("status", "milking", "dry"), FieldChange("number", "5", "55"))


def test_what_was_not_known_before_is_told_as_nothing():
    row = HerdRow(2, "5", electronic_id="826123450600001")
    assert changes_to(row, COW) == (FieldChange("electronic id", "", "826123450600001"),)


def test_a_lactation_is_told_with_the_calving_it_hangs_on_and_without_any_changes_nothing():
    assert changes_to(HerdRow(2, "5", lactation=3), COW) == (FieldChange("lactation", "", "3"),)
    assert changes_to(HerdRow(2, "6", lactation=3), KnownCow(2, "6")) == ()


def test_the_day_she_left_is_told():
    row = HerdRow(2, "5", status=CowStatus.SOLD, left_on=date(2026, 3, 1))
    assert changes_to(row, COW)[1] == FieldChange("left on", "", "2026-03-01")

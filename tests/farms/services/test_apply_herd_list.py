"""A kept herd list is applied, once."""

from datetime import date, timedelta

import pytest

from farms.domain.identity_kind import IdentityKind
from farms.models import Calving, Cow, CowIdentity, HerdImport
from farms.services.apply_herd_list import apply_herd_list
from farms.services.keep_herd_list import keep_herd_list
from tests.factories import NOON, make_cow, make_farm

LIST = b"""number,official tag,electronic id,status,born,calved
101,UK123450600001,,dry,2020-02-01,
205,UK123450700002,826000123456789,,2021-03-04,2025-12-01
206,,,,,
207,,12,,,
"""


@pytest.fixture
def kept(house):
    return keep_herd_list(farm=house.farm, file_name="herd.csv", content=LIST, at=NOON, by=house.office)


def cow_called(house, number):
    return Cow.objects.within(house.scope).get(farm=house.farm, number=number)


def test_new_cows_come_known_ones_change_and_faulty_rows_are_left_out(house, kept):
    plan = apply_herd_list(herd_import=kept, at=NOON)
    assert [row.number for row in plan.new] == ["205", "206"]
    known = cow_called(house, "101")
    assert (known.pk, known.status, known.born_on) == (house.cow.pk, "dry", date(2020, 2, 1))
    new = cow_called(house, "205")
    assert (new.status, new.calved_on) == ("milking", date(2025, 12, 1))
    tags = CowIdentity.objects.within(house.scope).filter(cow=new)
    assert {row.kind: row.value for row in tags} == {
        IdentityKind.OFFICIAL_TAG: "UK123450700002",
        IdentityKind.ELECTRONIC_ID: "826000123456789",
    }
    assert not Cow.objects.within(house.scope).filter(number="207").exists()


def test_the_outcome_is_kept_in_figures(house, kept):
    apply_herd_list(herd_import=kept, at=NOON)
    row = HerdImport.objects.within(house.scope).get()
    assert row.outcome == {"new": 2, "changed": 1, "unchanged": 0, "refused": 1}
    assert row.applied_at == NOON


def test_applying_it_a_second_time_finds_nothing_to_do(house, kept):
    apply_herd_list(herd_import=kept, at=NOON)
    cows = list(Cow.objects.within(house.scope).values())
    tags = list(CowIdentity.objects.within(house.scope).values())
    plan = apply_herd_list(herd_import=kept, at=NOON + timedelta(hours=1))
    assert (plan.new, plan.changed, plan.unchanged) == ((), (), 3)
    assert list(Cow.objects.within(house.scope).values()) == cows
    assert list(CowIdentity.objects.within(house.scope).values()) == tags
    assert HerdImport.objects.within(house.scope).get().applied_at == NOON


def test_empty_cells_take_nothing_away(house, kept):
    cow = make_cow(house.farm, "206", born_on=date(2019, 5, 6), note="Kicks")
    apply_herd_list(herd_import=kept, at=NOON)
    again = Cow.objects.within(house.scope).get(pk=cow.pk)
    assert (again.born_on, again.note) == (date(2019, 5, 6), "Kicks")


def test_cows_of_another_farm_with_the_same_number_stay_as_they_are(house, kept):
    other = make_cow(make_farm(house.business, "High Croft", by=house.owner), "101")
    apply_herd_list(herd_import=kept, at=NOON)
    assert Cow.objects.within(house.scope).get(pk=other.pk).status == "milking"
    assert Cow.objects.within(house.scope).filter(farm=other.farm).count() == 1


FIRST_LIST = b"number,calved,lactation\n101,2025-01-05,2\n102,2025-02-01,1\n"
NEXT_LIST = b"number,status,calved,lactation,left on\n101,,2026-01-20,3,\n102,sold,,,2026-02-10\n"


def apply_twice(house, content):
    """The second run is of the same list handed in again."""
    for _ in range(2):
        kept = keep_herd_list(farm=house.farm, file_name="h.csv", content=content, at=NOON, by=house.office)
        plan = apply_herd_list(herd_import=kept, at=NOON)
    return plan


def test_each_list_adds_the_calvings_it_tells_and_the_older_ones_stay(house):
    apply_twice(house, FIRST_LIST)
    plan = apply_twice(house, NEXT_LIST)
    rows = Calving.objects.within(house.scope).filter(cow=house.cow)
    assert list(rows.values_list("calved_on", "lactation")) == [(date(2025, 1, 5), 2), (date(2026, 1, 20), 3)]
    assert (plan.new, plan.changed, plan.unchanged) == ((), (), 2)


def test_a_cow_told_as_sold_leaves_on_her_day_and_does_not_come_anew_with_the_next_list(house):
    apply_twice(house, FIRST_LIST)
    apply_twice(house, NEXT_LIST)
    gone = cow_called(house, "102")
    assert (gone.status, gone.left_on) == ("sold", date(2026, 2, 10))

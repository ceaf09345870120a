"""A cow is kept with the ways she is known."""

from datetime import date

import pytest
from django.core.exceptions import ValidationError

from farms.domain.electronic_id import NotAnElectronicId
from farms.domain.identity_kind import IdentityKind
from farms.models import Calving, Cow, CowIdentity
from farms.services.save_cow import save_cow
from tests.factories import NOON, make_cow, make_house

TAG, CHIP, COLLAR = IdentityKind.OFFICIAL_TAG, IdentityKind.ELECTRONIC_ID, IdentityKind.COLLAR


def identities_of(cow):
    rows = CowIdentity.objects.within(cow.scope).filter(cow=cow)
    return {row.kind: row.value for row in rows}


def test_a_cow_is_kept_with_her_tag_in_its_one_written_form(house):
    cow = make_cow(house.farm, "312", {TAG: "uk 123450 600001", CHIP: "826 000123456789"})
    assert identities_of(cow) == {"official_tag": "UK123450600001", "electronic_id": "826000123456789"}
    assert Cow.objects.within(house.scope).known_as("600001").get() == cow


def test_an_identity_replaces_the_one_of_its_kind_and_leaves_the_others(house):
    cow = make_cow(house.farm, "312", {TAG: "UK123450600001", COLLAR: "12"})
    save_cow(cow=cow, identities={COLLAR: "13"})
    assert identities_of(cow) == {"official_tag": "UK123450600001", "collar": "13"}


def test_an_empty_identity_takes_it_away(house):
    cow = make_cow(house.farm, "312", {COLLAR: "12"})
    save_cow(cow=cow, identities={COLLAR: " "})
    assert identities_of(cow) == {}


def test_keeping_a_cow_without_a_word_on_identities_leaves_them(house):
    cow = make_cow(house.farm, "312", {COLLAR: "12"})
    cow.note = "Kicks"
    save_cow(cow=cow)
    assert identities_of(cow) == {"collar": "12"}


def test_a_broken_electronic_id_is_refused_and_the_cow_stays_as_she_was(house):
    cow = make_cow(house.farm, "312", {CHIP: "826000123456789"})
    cow.number = "313"
    with pytest.raises(NotAnElectronicId):
        save_cow(cow=cow, identities={CHIP: "12"})
    assert Cow.objects.within(house.scope).get(pk=cow.pk).number == "312"
    assert identities_of(cow) == {"electronic_id": "826000123456789"}


def test_a_cow_needs_a_number(house):
    with pytest.raises(ValidationError, match="number"):
        make_cow(house.farm, "")


def test_a_cow_cannot_stand_on_another_businesss_farm(house):
    with pytest.raises(ValidationError) as refused:
        save_cow(cow=Cow(business=house.business, farm=make_house("Fell & Beck").farm, number="1"))
    assert "farm" in refused.value.message_dict


def test_her_calving_is_kept_with_the_number_of_its_lactation_when_the_next_one_is_told(house):
    cow = Cow(business=house.business, farm=house.farm, number="312", calved_on=date(2025, 1, 5))
    save_cow(cow=cow, lactation=2)
    cow.calved_on = date(2026, 1, 20)
    save_cow(cow=cow, lactation=3)
    rows = Calving.objects.within(house.scope).filter(cow=cow)
    assert list(rows.values_list("calved_on", "lactation")) == [(date(2025, 1, 5), 2), (date(2026, 1, 20), 3)]


def test_a_new_cow_is_in_the_herd_since_the_day_she_was_put_on_the_list(house):
    cow = save_cow(cow=Cow(business=house.business, farm=house.farm, number="312"), at=NOON)
    assert (cow.entered_on, cow.left_on) == (date(2026, 3, 2), None)


def test_a_cow_that_is_sold_has_left_that_day_unless_another_was_told(house):
    house.cow.status = "sold"
    assert save_cow(cow=house.cow, at=NOON).left_on == date(2026, 3, 2)
    other = make_cow(house.farm, "312", status="dead", left_on=date(2026, 2, 1))
    assert save_cow(cow=other, at=NOON).left_on == date(2026, 2, 1)


def test_a_cow_that_came_back_has_not_left(house):
    house.cow.status = "sold"
    save_cow(cow=house.cow, at=NOON)
    house.cow.status = "milking"
    assert save_cow(cow=house.cow, at=NOON).left_on is None

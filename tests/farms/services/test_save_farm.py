"""A farm is kept, and every change of its hygiene level with the reason."""

from datetime import UTC, date, datetime
from decimal import Decimal

import pytest
from django.core.exceptions import ValidationError

from farms.domain.hygiene import HygieneLevel
from farms.models import Farm, HygieneChange, Payer
from farms.services.save_farm import save_farm
from tests.factories import NOON, make_house


def new_farm(business, name="High Croft", **fields):
    return Farm(business=business, name=name, latitude=Decimal("54.2"), longitude=Decimal("-2.5"), **fields)


def changes_of(house, farm):
    return HygieneChange.objects.within(house.scope).filter(farm=farm).order_by("pk")


def test_a_new_farm_is_kept_with_the_level_as_first_told(house):
    farm = save_farm(farm=new_farm(house.business), at=NOON, by=house.office)
    assert Farm.objects.within(house.scope).get(pk=farm.pk).hygiene_since == NOON.date()
    (change,) = changes_of(house, farm)
    assert (change.level, change.reason, change.changed_by) == (
        HygieneLevel.USUAL,
        "as first told",
        house.office,
    )


def test_a_new_level_is_written_down_with_its_reason_and_day(house):
    later = datetime(2026, 4, 1, 9, tzinfo=UTC)
    house.farm.hygiene_level = 2
    house.farm.hygiene_reason = "Sore heels in the heifers"
    save_farm(farm=house.farm, at=later, by=house.trimmer)
    change = changes_of(house, house.farm).last()
    assert (change.level, change.reason, change.since) == (2, "Sore heels in the heifers", date(2026, 4, 1))
    assert Farm.objects.within(house.scope).get(pk=house.farm.pk).hygiene_since == date(2026, 4, 1)


def test_mending_anything_else_writes_no_change_of_level(house):
    house.farm.access_notes = "Second gate, ring first."
    save_farm(farm=house.farm, at=NOON, by=house.owner)
    assert changes_of(house, house.farm).count() == 1


def test_the_day_of_a_change_is_the_day_in_the_zone_of_the_business(house):
    house.business.timezone = "Pacific/Auckland"
    house.business.save()
    evening = datetime(2026, 3, 2, 20, tzinfo=UTC)  # the 3rd in Auckland
    farm = save_farm(farm=new_farm(house.business), at=evening, by=house.owner)
    assert farm.hygiene_since == date(2026, 3, 3)


@pytest.mark.parametrize("fields", [{"latitude": Decimal(91)}, {"name": ""}, {"routine_interval_days": 3}])
def test_what_cannot_be_is_refused_and_nothing_is_kept(house, fields):
    farm = new_farm(house.business)
    for name, value in fields.items():
        setattr(farm, name, value)
    with pytest.raises(ValidationError) as refused:
        save_farm(farm=farm, at=NOON, by=house.owner)
    assert set(fields) <= set(refused.value.message_dict)
    assert Farm.objects.within(house.scope).count() == 1


def test_a_name_is_used_once_in_a_business_and_again_in_another(house):
    with pytest.raises(ValidationError, match="already exists"):
        save_farm(farm=new_farm(house.business, "Low Croft"), at=NOON, by=house.owner)
    assert make_house("Fell & Beck").farm.name == "Low Croft"


def test_another_businesss_payer_is_refused_as_if_it_were_not_there(house):
    theirs = Payer.objects.create(business=make_house("Fell & Beck").business, name="The Estate")
    with pytest.raises(ValidationError) as refused:
        save_farm(farm=new_farm(house.business, payer=theirs), at=NOON, by=house.owner)
    assert "payer" in refused.value.message_dict


@pytest.mark.parametrize(
    ("fields", "moves", "shows"),
    [
        ({}, 0, False),
        ({"phone": "0199 555 010", "herd_size": 3}, 0, False),
        ({"access_notes": "Mind the dog"}, 0, True),
        ({"name": "Upper Croft"}, 1, True),
        ({"address": "Up the track", "latitude": Decimal("54.2"), "name": "Upper Croft"}, 1, True),
        ({"longitude": Decimal("-2.31")}, 1, True),
        ({"latitude": Decimal("54.100000")}, 0, False),
    ],
)
def test_calendars_hear_of_a_new_place_and_of_new_notes_and_of_nothing_else(house, fields, moves, shows):
    farm, later = house.farm, datetime(2026, 4, 1, 9, tzinfo=UTC)
    before, since = farm.place_sequence, farm.shown_since
    for name, value in fields.items():
        setattr(farm, name, value)
    save_farm(farm=farm, at=later, by=farm.business.memberships.first().user)
    stored = Farm.objects.within(farm.scope).get(pk=farm.pk)
    assert stored.place_sequence == before + moves
    assert stored.shown_since == (later if shows else since)

"""Secret addresses of calendar feeds."""

import hashlib

import pytest
from django.core.exceptions import ValidationError

from tests.factories import NOON, make_house
from trimops.kernel.secret_link import hash_of
from trimops.tenancy.errors import MixedBusinesses
from visits.models import CalendarAddress
from visits.services.make_calendar_address import FeedWish, make_calendar_address


def make(house, shows=None, name="Van 1, phone"):
    return make_calendar_address(business=house.business, wish=FeedWish(name, shows), at=NOON, by=house.owner)


def test_the_secret_is_told_once_and_only_its_hash_is_kept(house):
    made = make(house)
    stored = CalendarAddress.objects.within(house.scope).get()
    assert stored.secret_hash == hashlib.sha256(made.secret.encode()).hexdigest() == hash_of(made.secret)
    assert made.secret not in [str(value) for value in vars(stored).values()]
    assert len(made.secret) >= 43  # 256 bits in base64


def test_two_addresses_never_share_a_secret(house):
    assert make(house).secret != make(house).secret


def test_an_address_shows_a_van_or_a_farm_or_all(house):
    assert (make(house, house.van).row.van, make(house, house.van).row.farm) == (house.van, None)
    assert (make(house, house.farm).row.van, make(house, house.farm).row.farm) == (None, house.farm)
    assert (make(house).row.van, make(house).row.farm) == (None, None)


def test_another_businesss_van_or_farm_cannot_be_shown(house):
    theirs = make_house("Fell & Beck")
    for shown in (theirs.van, theirs.farm):
        with pytest.raises(MixedBusinesses):
            make(house, shown)
    assert not CalendarAddress.objects.within(house.scope).exists()


def test_an_address_needs_a_name(house):
    with pytest.raises(ValidationError, match="name"):
        make(house, name="")

"""A farm asks to be erased: a wish, and nothing else yet."""

import pytest

from farms.models import Cow
from farms.selectors.erasures import open_erasure
from farms.services.ask_erasure import ErasureAskedAlready, ask_erasure
from farms.services.refuse_erased import FarmIsErased
from farms.services.withdraw_erasure import withdraw_erasure
from tests.factories import NOON


def ask(house, note="We gave up milking."):
    return ask_erasure(farm=house.farm, note=note, at=NOON, by=house.client)


def test_a_wish_is_put_down_and_erases_nothing(house):
    wish = ask(house)
    assert (wish.asked_by, wish.asked_at, wish.note) == (house.client, NOON, "We gave up milking.")
    assert open_erasure(house.scope, house.farm) == wish
    assert Cow.objects.within(house.scope).filter(farm=house.farm).exists()


def test_a_second_wish_waits_for_the_first(house):
    wish = ask(house)
    with pytest.raises(ErasureAskedAlready):
        ask(house)
    withdraw_erasure(erasure=wish, at=NOON)
    assert ask(house).pk != wish.pk


def test_an_erased_farm_has_nothing_to_ask_for(house):
    house.farm.erased_at = NOON
    house.farm.save()
    with pytest.raises(FarmIsErased):
        ask(house)

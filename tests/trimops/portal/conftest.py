"""A business whose farm client has every right, and a browser in which they have signed in."""

import pytest
from django.test import Client

from farms.models import FarmAccess
from farms.services.give_farm_rights import give_farm_rights
from tests.factories import House, make_house
from trimops.accounts.roles import FarmRight


@pytest.fixture
def house(db) -> House:
    return make_house()


@pytest.fixture
def rights(house):
    """Gives the farm client these rights and no others."""

    def give(*kept: FarmRight) -> None:
        access = FarmAccess.objects.within(house.scope).get(farm=house.farm)
        give_farm_rights(access=access, rights=kept)

    return give


@pytest.fixture
def client(house, rights) -> Client:
    rights(*FarmRight)
    browser = Client()
    browser.force_login(house.client)
    return browser

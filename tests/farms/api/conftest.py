import pytest

from tests.factories import House, make_house
from tests.visits.api.caller import Caller


@pytest.fixture
def house(db) -> House:
    return make_house()


@pytest.fixture
def office(house) -> Caller:
    return Caller(house.office)


@pytest.fixture
def client_of_farm(house) -> Caller:
    return Caller(house.client)

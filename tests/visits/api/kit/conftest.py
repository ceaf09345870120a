import pytest

from tests.factories import House, make_house, make_kit
from tests.visits.api.caller import Caller
from visits.services.kit.stock_place import place_of_van, store_of


@pytest.fixture
def house(db) -> House:
    return make_house()


@pytest.fixture
def office(house) -> Caller:
    return Caller(house.office)


@pytest.fixture
def trimmer(house) -> Caller:
    return Caller(house.trimmer)


@pytest.fixture
def kit(house):
    return make_kit(house.business)


@pytest.fixture
def places(house):
    """Keys of the store and of the van's place."""
    return {"store": store_of(house.scope).pk, "van": place_of_van(house.van).pk}


@pytest.fixture
def client_of_farm(house) -> Caller:
    return Caller(house.client)

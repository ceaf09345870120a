import pytest

from tests.factories import House, make_house


@pytest.fixture
def house(db) -> House:
    return make_house()

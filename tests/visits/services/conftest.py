"""One small business for the services of a visit."""

import pytest

from tests.factories import House, make_house, under_way


@pytest.fixture
def house(db) -> House:
    return make_house()


@pytest.fixture
def visit(house):
    """A visit that is under way."""
    return under_way(house.farm, house.van)

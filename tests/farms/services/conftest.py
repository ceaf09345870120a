"""One small business for the services of a farm."""

import pytest

from tests.factories import House, make_house


@pytest.fixture
def house(db) -> House:
    return make_house()

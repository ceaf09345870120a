"""One small business, kept in a database that several processes look into."""

import pytest

from tests.factories import House, make_house
from tests.services.races.crowd import Person
from trimops.accounts.roles import Role


@pytest.fixture
def house(transactional_db: None) -> House:
    return make_house()


@pytest.fixture
def people(house: House) -> dict[Role, Person]:
    return {role: Person(member.user) for role, member in house.memberships.items()}

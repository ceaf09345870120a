"""One business with its owner."""

import pytest

from tests.factories import make_business, make_member
from trimops.accounts.roles import Role


@pytest.fixture
def business(db):
    return make_business()


@pytest.fixture
def owner(business):
    """The membership of the one owner."""
    return make_member(business, Role.OWNER)

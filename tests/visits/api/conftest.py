"""One small business with a visit under way and a phone at its crush."""

import pytest
from django.test import Client

from tests.factories import House, make_house, under_way
from tests.visits.api.caller import Caller
from tests.visits.api.phone import Phone


@pytest.fixture
def house(db) -> House:
    return make_house()


@pytest.fixture
def visit(house):
    return under_way(house.farm, house.van)


@pytest.fixture
def signed_in():
    """A browser in which that person has signed in; faults of the program are answered 500, as at work."""

    def sign_in(user):
        client = Client(raise_request_exception=False)
        client.force_login(user)
        return client

    return sign_in


@pytest.fixture
def phone(house, visit, signed_in):
    return Phone(signed_in(house.trimmer), visit)


@pytest.fixture
def owner(house):
    return Caller(house.owner)


@pytest.fixture
def client_of_farm(house):
    return Caller(house.client)

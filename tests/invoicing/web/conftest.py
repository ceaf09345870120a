"""The office of the business, signed in."""

import pytest
from django.test import Client


@pytest.fixture
def office(house) -> Client:
    client = Client()
    client.force_login(house.office)
    return client

"""Two furnished businesses, made once for a file and taken back at its end."""

import pytest
from django.conf import settings
from django.db import transaction
from django.test import Client

from tests.walls.furnished import furnish
from tests.walls.header_client import HeaderClient


@pytest.fixture(scope="module")
def mine(django_db_setup, django_db_blocker):
    with django_db_blocker.unblock(), transaction.atomic():
        yield furnish("Ash & Rye Foot Trimming")
        transaction.set_rollback(True)


@pytest.fixture(scope="module")
def theirs(mine):
    return furnish("Fell & Beck")


@pytest.fixture(scope="module")
def sessions(mine):
    """The sign-in of each person of the first business, by key: every test looks through their eyes."""
    found = {}
    for membership in mine.house.memberships.values():
        client = Client()
        client.force_login(membership.user)
        found[membership.user.pk] = client.cookies[settings.SESSION_COOKIE_NAME].value
    return found


@pytest.fixture
def signed_in(sessions, db):
    """A browser in which that person has signed in; faults of the program are answered 500, as at work."""

    def sign_in(user):
        client = HeaderClient(raise_request_exception=False)
        if user.pk in sessions:
            client.cookies[settings.SESSION_COOKIE_NAME] = sessions[user.pk]
        else:
            client.force_login(user)
        return client

    return sign_in

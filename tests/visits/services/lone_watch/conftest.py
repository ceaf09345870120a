import pytest
from django.db import transaction
from django.test import override_settings

from tests.visits.services.lone_watch.watched import can_tell, watched_house


@pytest.fixture(scope="module")
def furnished(django_db_setup, django_db_blocker):
    """Made once for a file and taken back at its end; each test stands on it in a transaction of its own."""
    leaves = override_settings(EMAIL_HOST="mail.example", SMS="mail:gateway.example")
    with django_db_blocker.unblock(), transaction.atomic(), leaves:
        yield watched_house()
        transaction.set_rollback(True)


@pytest.fixture
def house(furnished, db, settings):
    """The watch is on."""
    can_tell(settings)
    return furnished

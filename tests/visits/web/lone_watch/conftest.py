import pytest
from django.test import Client
from django.utils import timezone

from tests.visits.services.lone_watch.watched import can_tell, house_of_a_file
from trimops.watch.timetable import note_beat


@pytest.fixture(scope="module")
def furnished(django_db_setup, django_db_blocker):
    with house_of_a_file(django_db_blocker) as house:
        yield house


@pytest.fixture
def house(furnished, db, settings):
    """The watch is on, and the timetable is kept now."""
    can_tell(settings)
    note_beat(timezone.now())
    return furnished


@pytest.fixture
def desk(house):
    return sits(house.trimmer)


def sits(user):
    client = Client()
    client.force_login(user)
    return client

import pytest

from tests.visits.services.lone_watch.watched import can_tell, house_of_a_file


@pytest.fixture(scope="module")
def furnished(django_db_setup, django_db_blocker):
    with house_of_a_file(django_db_blocker) as house:
        yield house


@pytest.fixture
def house(furnished, db, settings):
    """The watch is on."""
    can_tell(settings)
    return furnished

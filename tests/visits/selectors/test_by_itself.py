"""What the page says of the watch over who works alone, as things stand and not as it was switched on."""

from datetime import timedelta

import pytest

from tests.factories import NOON, make_van
from tests.visits.services.lone_watch.watched import can_tell, watched_house
from trimops.accounts.roles import Role
from visits.models import WatchContact
from visits.selectors.by_itself import parts_of

pytestmark = pytest.mark.django_db


@pytest.fixture
def house(settings):
    can_tell(settings)
    return watched_house()


def word(house, at=NOON):
    (part,) = [part for part in parts_of(house.business, Role.OWNER, at) if part.name == "Lone-worker watch"]
    return part.word


def test_a_watch_that_can_tell_somebody_is_on(house):
    assert word(house) == "On"


def test_one_whose_mail_server_was_taken_away_is_not_called_on(house, settings):
    settings.EMAIL_HOST = ""
    assert word(house) == "Look"


def test_nor_one_whose_timetable_stands_still(house):
    assert word(house, NOON + timedelta(hours=1)) == "Look"


def test_nor_one_with_a_van_for_which_nobody_is_told(house):
    WatchContact.objects.within(house.scope).update(van=house.van)
    assert word(house) == "On"
    make_van(house.business, house.owner, "Van 2")
    assert word(house) == "Look"

from datetime import timedelta
from decimal import Decimal as D

import pytest

from invoicing.domain.travel_charge import DistanceUnit
from invoicing.services.change_journey import change_journey
from invoicing.services.lock_period import PeriodLocked, lock_period
from invoicing.services.note_journey import JourneyRefused, JourneyWord, note_journey
from tests.factories import MONDAY, NOON

FRIDAY = MONDAY - timedelta(days=3)


@pytest.fixture
def drive(house):
    word = JourneyWord(FRIDAY, "Yard", "Low Croft", "Visit", D("12.4"), DistanceUnit.MILE)
    return note_journey(business=house.business, word=word, at=NOON, by=house.office)


def change(drive, house, distance, because="Odometer: 410 to 424"):
    return change_journey(journey=drive, distance=D(distance), because=because, at=NOON, by=house.office)


def test_the_first_figure_stays_beside_the_new_one(house, drive):
    change(drive, house, "14.0")
    row = change(drive, house, "0", "It was a private drive")
    assert (row.distance, row.reckoned, row.reckoned_source) == (0, D("12.4"), "put in by hand")
    assert (row.source, row.mended_because) == ("odometer", "It was a private drive")


def test_what_makes_no_sense_is_refused(house, drive):
    for distance, because in (("14", " "), ("-1", "x"), ("14.05", "x")):
        with pytest.raises(JourneyRefused):
            change(drive, house, distance, because)


def test_a_closed_day_stays_as_it_is(house, drive):
    lock_period(scope=house.scope, until=FRIDAY, why="Books are done", at=NOON, by=house.owner)
    with pytest.raises(PeriodLocked):
        change(drive, house, "14")

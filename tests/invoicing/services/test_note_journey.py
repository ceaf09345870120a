from dataclasses import replace
from datetime import timedelta
from decimal import Decimal as D

import pytest

from invoicing.domain.travel_charge import DistanceUnit
from invoicing.models import Journey
from invoicing.services.lock_period import PeriodLocked, lock_period
from invoicing.services.note_journey import JourneyRefused, JourneyWord, note_journey
from tests.factories import MONDAY, NOON

WORD = JourneyWord(MONDAY, "Yard", "Merchant", "Blocks and glue", D("12.4"), DistanceUnit.MILE)


def note(house, **changes):
    return note_journey(business=house.business, word=replace(WORD, **changes), at=NOON, by=house.office)


def test_drives_stand_in_the_order_they_were_put_in(house):
    first, second = note(house), note(house, from_words="Merchant", to_words="Yard")
    assert (first.position, second.position, first.is_by_hand, first.noted_by) == (1, 2, True, house.office)


def test_what_makes_no_sense_is_refused(house):
    ahead = {"on": MONDAY + timedelta(days=1)}
    for wrong in (ahead, {"distance": D("-1")}, {"distance": D(4000)}, {"distance": D("1.25")}):
        with pytest.raises(JourneyRefused):
            note(house, **wrong)
    assert not Journey.objects.within(house.scope).exists()


def test_a_closed_day_takes_no_more(house):
    until = MONDAY - timedelta(days=1)
    lock_period(scope=house.scope, until=until, why="Books are done", at=NOON, by=house.owner)
    with pytest.raises(PeriodLocked):
        note(house, on=until)

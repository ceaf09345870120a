"""Undoing asks for a reason and an open period."""

import pytest

from invoicing.services.lock_period import PeriodLocked, lock_period
from invoicing.services.undo_allocation import undo_allocation
from invoicing.services.write_off import write_off
from tests.factories import MONDAY, NOON
from tests.invoicing.issued_papers import issued


def test_not_in_a_closed_period(house):
    row = write_off(invoice=issued(house.farm, "1"), reason="Small", at=NOON, by=house.owner)
    later = NOON.replace(day=9)
    lock_period(scope=house.scope, until=MONDAY, why="Done", at=later, by=house.owner)
    with pytest.raises(PeriodLocked):
        undo_allocation(allocation=row, because="Paid after all", at=later)

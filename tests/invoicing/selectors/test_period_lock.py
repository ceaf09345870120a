"""What is locked is what the newest row says."""

from datetime import date, timedelta

from invoicing.selectors.period_lock import lock_history, locked_until
from invoicing.services.lock_period import lock_period
from tests.factories import NOON, make_house

JANUARY, FEBRUARY = date(2026, 1, 31), date(2026, 2, 28)


def lock(house, until, why, at=NOON):
    return lock_period(scope=house.scope, until=until, why=why, at=at, by=house.owner)


def test_nothing_is_locked_until_somebody_locks(db):
    house = make_house()
    assert (locked_until(house.scope), lock_history(house.scope)) == (None, [])


def test_the_newest_row_holds_even_if_it_opens(db):
    house = make_house()
    lock(house, FEBRUARY, "Sent to the accountant")
    lock(house, JANUARY, "A bill of February was forgotten", NOON + timedelta(hours=1))
    assert locked_until(house.scope) == JANUARY
    assert [row.locked_until for row in lock_history(house.scope)] == [JANUARY, FEBRUARY]


def test_another_business_sees_none_of_it(db):
    lock(make_house(), JANUARY, "Sent to the accountant")
    assert lock_history(make_house("Fell & Beck").scope) == []

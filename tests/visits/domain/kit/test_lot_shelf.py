"""The oldest date goes first."""

from datetime import date

import pytest

from visits.domain.kit.lot_shelf import LotShelf
from visits.domain.kit.stock_lines import Lot

BOUGHT = date(2026, 1, 5)
LATE, SOON, NEVER, OLD = (
    Lot(1, date(2027, 6, 1), BOUGHT),
    Lot(2, date(2026, 6, 1), date(2026, 2, 1)),
    Lot(3, None, date(2026, 2, 1)),
    Lot(4, None, BOUGHT),
)
VAN = 7


@pytest.fixture
def shelf():
    """Two of each lot, and two nobody knows the number of, in the van."""
    shelf = LotShelf([LATE, SOON, NEVER, OLD])
    for lot in (None, 1, 2, 3, 4):
        shelf.put(VAN, lot, 2)
    return shelf


def test_dates_go_first_then_what_was_bought_first_then_what_nobody_knows(shelf):
    assert [lot for lot, _ in shelf.at(VAN)] == [2, 1, 4, 3, None]
    assert shelf.take(VAN, 7) == ([(2, 2), (1, 2), (4, 2), (3, 1)], 0)


def test_a_named_lot_goes_before_older_ones_and_then_the_oldest(shelf):
    assert shelf.take(VAN, 3, NEVER.id) == ([(3, 2), (2, 1)], 0)


def test_a_lot_that_does_not_lie_there_gives_way_to_the_oldest():
    shelf = LotShelf([LATE, SOON])
    shelf.put(VAN, 1, 2)
    assert shelf.take(VAN, 1, SOON.id) == ([(1, 1)], 0)


def test_what_was_taken_beyond_all_lots_is_owed_and_paid_by_what_comes_next():
    shelf = LotShelf([LATE, SOON])
    assert shelf.use(VAN, 5) == 5
    shelf.put(VAN, 1, 3)
    assert (shelf.at(VAN), shelf.owed[VAN]) == ([], 2)
    shelf.put(VAN, 2, 3)
    assert (shelf.at(VAN), shelf.owed[VAN]) == ([(2, 1)], 0)


def test_what_comes_back_is_what_was_taken_last():
    shelf = LotShelf([LATE, SOON])
    shelf.put(VAN, 2, 2)
    shelf.put(VAN, 1, 2)
    shelf.use(VAN, 3)
    shelf.bring_back(VAN, 2)
    assert shelf.at(VAN) == [(2, 1), (1, 2)]


def test_more_found_than_was_ever_taken_has_no_number():
    shelf = LotShelf([])
    shelf.use(VAN, 2)
    shelf.bring_back(VAN, 5)
    assert (shelf.at(VAN), shelf.owed[VAN]) == ([(None, 3)], 0)


def test_what_was_thrown_away_or_moved_does_not_come_back_as_its_lot():
    shelf = LotShelf([SOON])
    shelf.put(VAN, 2, 2)
    shelf.take(VAN, 2)
    shelf.bring_back(VAN, 1)
    assert shelf.at(VAN) == [(None, 1)]


def test_unknown_stock_is_not_taken_as_if_it_were_named():
    """Found by the random machine: no lot named is not the lot without a number."""
    shelf = LotShelf([SOON])
    shelf.put(VAN, None, 2)
    shelf.put(VAN, 2, 1)
    assert shelf.take(VAN, 1) == ([(2, 1)], 0)

"""What is thrown away leaves the ledger, with why."""

from datetime import timedelta
from uuid import uuid4

import pytest

from tests.factories import NOON, make_kit, stock_up
from tests.visits.services.kit.stock_words import amount, ledger, word
from visits.domain.kit.stock_kinds import WriteOffReason
from visits.services.kit.stock_place import store_of
from visits.services.kit.stock_word import MoreThanIsThere, StockRefused
from visits.services.kit.write_off_stock import write_off_stock


@pytest.fixture
def wood(house):
    return make_kit(house.business)["wood"]


@pytest.fixture
def lot(wood):
    return stock_up(wood, 10, at=NOON - timedelta(hours=1)).lot


def throw_away(house, gone, **words):
    said = {"because": WriteOffReason.EXPIRED, "word": word(house), **words}
    return write_off_stock(place=store_of(house.scope), gone=gone, **said)


def test_it_leaves_with_its_lot_and_its_reason_once(house, wood, lot):
    said = word(house, uid=uuid4(), note="Soft")
    first, again = (throw_away(house, [amount(wood, 4, lot)], word=said) for _ in range(2))
    assert again == first
    (line,) = first
    assert (line.quantity, line.lot, line.because, line.note) == (-4, lot, "expired", "Soft")
    assert ledger(wood)[1:] == [("written_off", False, -4)]


def test_more_than_is_there_wants_a_word(house, wood, lot):
    with pytest.raises(MoreThanIsThere, match="10 of Wooden block, not 11"):
        throw_away(house, [amount(wood, 11, lot)])
    throw_away(house, [amount(wood, 11)], is_really_there=True)
    assert sum(quantity for _, _, quantity in ledger(wood)) == -1


def test_nothing_and_the_future_are_refused(house, wood, lot):
    for words in ({"gone": []}, {"gone": [amount(wood, 0, lot)]}):
        with pytest.raises(StockRefused):
            throw_away(house, **words)
    with pytest.raises(StockRefused, match="lies ahead"):
        throw_away(house, [amount(wood, 1)], word=word(house, at=NOON + timedelta(days=5)))

"""A count is a statement: so much lay there."""

from datetime import timedelta
from decimal import Decimal
from uuid import uuid4

import pytest

from tests.factories import NOON, make_kit, stock_up
from tests.visits.services.kit.stock_words import amount, bought, ledger, word
from visits.models import StockCount
from visits.services.kit.count_stock import count_stock
from visits.services.kit.stock_place import place_of_van
from visits.services.kit.stock_word import StockRefused

BEFORE = NOON - timedelta(hours=1)


@pytest.fixture
def kit(house):
    """10 wooden blocks and 500 ml of glue lie in the van."""
    kit = make_kit(house.business)
    stock_up(kit["wood"], 10, at=BEFORE, van=house.van)
    stock_up(kit["glue"], 500, at=BEFORE, van=house.van)
    return kit


@pytest.fixture
def van(house):
    return place_of_van(house.van)


def test_what_differs_is_written_and_what_is_as_it_should_be_is_only_kept(house, kit, van):
    counted = [amount(kit["wood"], 8), amount(kit["glue"], 500), amount(kit["wrap"], 0)]
    said = word(house, uid=uuid4())
    rows, again = (count_stock(place=van, counted=counted, word=said) for _ in range(2))
    assert again == rows
    assert [row.counted for row in rows] == [8, 500, 0]
    assert ledger(kit["wood"])[1:] == [("counted", True, -2)]
    assert len(ledger(kit["glue"])) == 1
    assert ledger(kit["wrap"]) == []


def test_a_count_of_last_week_is_true_of_last_week(house, kit, van):
    count_stock(place=van, counted=[amount(kit["wood"], 7)], word=word(house))
    earlier = BEFORE + timedelta(minutes=1)
    count_stock(place=van, counted=[amount(kit["wood"], 12)], word=word(house, at=earlier))
    assert ledger(kit["wood"])[1:] == [("counted", True, 2), ("counted", True, -3), ("counted", True, -2)]


def test_of_two_counts_at_one_moment_the_later_word_stands(house, kit, van):
    for counted in (7, 9):
        count_stock(place=van, counted=[amount(kit["wood"], counted)], word=word(house))
    assert sum(quantity for _, _, quantity in ledger(kit["wood"])) == 9
    bought(van, kit["wood"], 1, at=BEFORE)
    assert sum(quantity for _, _, quantity in ledger(kit["wood"])) == 9


def test_what_cannot_have_been_counted_is_refused(house, kit, van):
    for counted in (
        [],
        [amount(kit["wood"], -1)],
        [amount(kit["glue"], "9000000")],
        [amount(kit["wood"], 1)] * 2,
    ):
        with pytest.raises(StockRefused):
            count_stock(place=van, counted=counted, word=word(house))
    with pytest.raises(StockRefused, match="lies ahead"):
        count_stock(
            place=van, counted=[amount(kit["wood"], 1)], word=word(house, noted_at=NOON - timedelta(days=1))
        )
    assert not StockCount.objects.within(house.scope).exists()
    assert Decimal(ledger(kit["wood"])[0][2]) == 10

"""Stock goes from place to place."""

from datetime import timedelta
from decimal import Decimal
from uuid import uuid4

import pytest

from tests.factories import NOON, make_kit, make_van, stock_up
from tests.visits.services.kit.stock_words import amount, ledger, word
from visits.models import StockCount, StockMovement
from visits.services.kit.move_stock import Way, move_stock
from visits.services.kit.stock_place import place_of_van, store_of
from visits.services.kit.stock_word import MoreThanIsThere, StockRefused

BEFORE = NOON - timedelta(hours=1)


@pytest.fixture
def kit(house):
    return make_kit(house.business)


@pytest.fixture
def way(house, kit):
    """From the store, in which there are 10 wooden blocks, to the van."""
    stock_up(kit["wood"], 10, at=BEFORE)
    return Way(store_of(house.scope), place_of_van(house.van))


def test_it_leaves_one_place_and_comes_to_the_other_at_once(house, kit, way):
    said = word(house, uid=uuid4(), note="For Tuesday")
    first, again = (move_stock(way=way, moved=[amount(kit["wood"], 4)], word=said) for _ in range(2))
    assert again == first
    assert ledger(kit["wood"])[1:] == [("moved", False, -4), ("moved", True, 4)]
    assert {(line.uid, line.at, line.note) for line in first} == {(said.uid, NOON, "For Tuesday")}


def test_from_van_to_van_with_its_lot(house, kit):
    other = make_van(house.business, house.trimmer, "Second van")
    lot = stock_up(kit["wood"], 10, at=BEFORE, van=house.van).lot
    way = Way(place_of_van(house.van), place_of_van(other))
    lines = move_stock(way=way, moved=[amount(kit["wood"], 3, lot)], word=word(house))
    assert [(line.place.van, line.lot, line.quantity) for line in lines] == [
        (house.van, lot, -3),
        (other, lot, 3),
    ]


def test_more_than_is_there_is_refused_with_what_is_there_until_somebody_says_it_is(house, kit, way):
    moved = [amount(kit["wood"], 12), amount(kit["wrap"], 1)]
    with pytest.raises(MoreThanIsThere) as refusal:
        move_stock(way=way, moved=moved, word=word(house))
    assert "10 of Wooden block, not 12; none of Wrap, not 1" in refusal.value.message
    assert len(ledger(kit["wood"])) == 1
    move_stock(way=way, moved=moved, word=word(house), is_really_there=True)
    assert ledger(kit["wood"])[1:] == [("moved", False, -12), ("moved", True, 12)]


def test_what_was_there_then_counts_not_what_is_there_now(house, kit, way):
    with pytest.raises(MoreThanIsThere, match="then had none"):
        move_stock(way=way, moved=[amount(kit["wood"], 1)], word=word(house, at=BEFORE - timedelta(days=1)))


def test_two_lines_of_one_thing_are_looked_at_together(house, kit, way):
    lot = stock_up(kit["wood"], 1, at=BEFORE).lot
    with pytest.raises(MoreThanIsThere, match="11 of Wooden block, not 12"):
        move_stock(way=way, moved=[amount(kit["wood"], 6), amount(kit["wood"], 6, lot)], word=word(house))


def test_counts_of_both_places_stay_true(house, kit, way):
    for place, counted in ((way.source, 9), (way.target, 2)):
        words = {"consumable": kit["wood"], "place": place, "counted": counted, "at": NOON}
        StockCount.objects.create(business=house.business, by=house.owner, noted_at=NOON, **words)
    move_stock(way=way, moved=[amount(kit["wood"], 4)], word=word(house, at=NOON - timedelta(minutes=5)))
    lines = StockMovement.objects.within(house.scope).filter(consumable=kit["wood"], kind="counted")
    assert {line.place_id: line.quantity for line in lines} == {way.source.pk: 3, way.target.pk: -2}


def test_what_cannot_be_meant_is_refused(house, kit, way):
    foreign = stock_up(kit["glue"], 10, at=BEFORE).lot
    wood = amount(kit["wood"], 1)
    for moved, words in (
        ([], "Nothing"),
        ([wood, wood], "twice"),
        ([amount(kit["wood"], 0)], "say how much"),
        ([amount(kit["wood"], "-1")], "nought or more"),
        ([amount(kit["wood"], 1, foreign)], "no lot of"),
    ):
        with pytest.raises(StockRefused, match=words):
            move_stock(way=way, moved=moved, word=word(house))
    with pytest.raises(StockRefused, match="lies there already"):
        move_stock(way=Way(way.source, way.source), moved=[wood], word=word(house))
    with pytest.raises(StockRefused, match="lies ahead"):
        move_stock(way=way, moved=[wood], word=word(house, at=NOON + timedelta(days=9)))
    assert StockMovement.objects.within(house.scope).filter(kind="moved").count() == 0
    assert Decimal(wood.quantity) == 1

"""What lies where now."""

from datetime import timedelta
from decimal import Decimal

import pytest

from tests.factories import NOON, make_house, make_kit, stock_up
from tests.visits.services.kit.stock_words import amount, word
from visits.selectors.kit.stock_now import stock_now
from visits.services.kit.count_stock import count_stock
from visits.services.kit.move_stock import Way, move_stock
from visits.services.kit.stock_place import place_of_van, store_of


@pytest.fixture
def way(house):
    return Way(store_of(house.scope), place_of_van(house.van))


@pytest.fixture
def kit(house, way):
    """10 blocks bought, 12 taken out of the store; of glue 1.1 ml came three times; no wraps yet."""
    kit = make_kit(house.business)
    stock_up(kit["wood"], 10, at=NOON)
    move_stock(way=way, moved=[amount(kit["wood"], 12)], word=word(house), is_really_there=True)
    for _ in range(3):
        stock_up(kit["glue"], "1.1", at=NOON)
    return kit


def test_each_thing_at_each_place_the_store_first(house, kit, way):
    found = {stock.consumable.name: stock for stock in stock_now(house.scope)}
    assert [(at.place, at.balance) for at in found["Wooden block"].places] == [
        (way.source, -2),
        (way.target, 12),
    ]
    assert [at.balance for at in found["Wrap"].places] == [0, 0]
    assert str(found["Glue"].balance) == "3.30"


def test_below_nought_is_said_though_other_places_have_some(house, kit, way):
    wood = next(stock for stock in stock_now(house.scope) if stock.consumable == kit["wood"])
    assert (wood.balance, wood.is_short) == (10, True)
    assert (wood.at(way.source.pk).is_short, wood.at(way.target.pk).is_short) == (True, False)


def test_a_place_that_was_only_ever_used_from_has_not_been_told(house, kit, way):
    later = NOON + timedelta(hours=1)
    count_stock(place=way.source, counted=[amount(kit["wrap"], 0)], word=word(house, at=later))
    wrap = next(stock for stock in stock_now(house.scope) if stock.consumable == kit["wrap"])
    assert [(at.is_told, at.counted_at) for at in wrap.places] == [(True, later), (False, None)]


def test_what_is_out_of_use_shows_while_some_is_left(house, kit):
    for name in ("wood", "wrap"):
        kit[name].is_active = False
        kit[name].save()
    assert [stock.consumable.name for stock in stock_now(house.scope)] == ["Wooden block", "Glue"]


def test_four_queries_and_nothing_of_others(house, kit, django_assert_num_queries):
    with django_assert_num_queries(4):
        stock_now(house.scope)
    assert stock_now(make_house("Another business").scope) == []
    with pytest.raises(KeyError):
        stock_now(house.scope)[0].at(Decimal(0))

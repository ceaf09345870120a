"""The van is loaded from the store's oldest good lots, once."""

from datetime import timedelta
from decimal import Decimal
from uuid import uuid4

import pytest

from tests.factories import NOON, make_house, make_kit
from tests.visits.services.kit.stock_words import bought, word
from visits.models import Consumable, StockMovement
from visits.selectors.kit.last_load import last_load
from visits.selectors.kit.lot_portions import lot_portions
from visits.services.kit.load_van import LoadedMeanwhile, LoadWord, WantedLoad, load_van
from visits.services.kit.stock_place import place_of_van, store_of
from visits.services.kit.stock_word import MoreThanIsThere, StockRefused

LATER = NOON + timedelta(hours=6)
TOMORROW = NOON.date() + timedelta(days=1)


@pytest.fixture
def house(db):
    return make_house()


@pytest.fixture
def glue(house):
    """Three lots in the store: past its date tomorrow, the next, the newest."""
    glue = make_kit(house.business)["glue"]
    for number, days in enumerate((0, 30, 90)):
        expires = NOON.date() + timedelta(days=days)
        bought(store_of(house.scope), glue, 100, lot_code=f"L{number}", expires_on=expires)
    return glue


def load(house, item, quantity, **words):
    loads = [WantedLoad(item, Decimal(quantity))]
    said = word(house, at=LATER, uid=words.pop("uid", None))
    return load_van(van=house.van, load=LoadWord(TOMORROW, loads, **words), word=said)


def in_van(house, item):
    lots = lot_portions(house.scope).get((item.pk, place_of_van(house.van).pk), ())
    return [(each.code, each.quantity) for each in lots]


def test_the_oldest_lot_that_is_good_tomorrow_goes_first(house, glue):
    load(house, glue, 150)
    assert in_van(house, glue) == [("L1", 100), ("L2", 50)]


def test_twice_the_same_form_loads_once(house, glue):
    uid = uuid4()
    first = load(house, glue, 150, uid=uid)
    assert [row.pk for row in load(house, glue, 150, uid=uid)] == [row.pk for row in first]
    assert StockMovement.objects.within(house.scope).filter(kind="moved").count() == 4


def test_a_list_that_is_open_in_two_tabs_loads_once(house, glue):
    uid, seen = uuid4(), last_load(house.van)
    load(house, glue, 100, seen=seen, uid=uid)
    with pytest.raises(LoadedMeanwhile, match="lacking now"):
        load(house, glue, 100, seen=seen)
    load(house, glue, 100, seen=seen, uid=uid)
    assert in_van(house, glue) == [("L1", 100)]
    load(house, glue, 20, seen=last_load(house.van))
    assert in_van(house, glue) == [("L1", 100), ("L2", 20)]


def test_stock_past_its_date_is_not_loaded_in_silence(house, glue):
    with pytest.raises(StockRefused, match=r"past its date on that day \(lot L0\)"):
        load(house, glue, 250)
    assert in_van(house, glue) == []


def test_more_than_the_store_has_is_booked_on_a_persons_word(house, glue):
    wood = Consumable.objects.within(house.scope).get(name="Wooden block")
    with pytest.raises(MoreThanIsThere, match="none of Wooden block"):
        load(house, wood, 3)
    load(house, wood, 3, is_really_there=True)
    rows = StockMovement.objects.within(house.scope).filter(consumable=wood).order_by("pk")
    assert [row.quantity for row in rows] == [-3, 3]

"""The ledger of one thing, to be read."""

from datetime import timedelta
from decimal import Decimal

import pytest

from tests.factories import NOON, make_house, make_kit, stock_up
from tests.visits.services.kit.stock_words import amount, bought, word
from visits.selectors.kit.balances_at import balances_at
from visits.selectors.kit.item_ledger import PER_PAGE, item_ledger
from visits.selectors.kit.ledger_lines import source_of
from visits.services.kit.count_stock import count_stock
from visits.services.kit.move_stock import Way, move_stock
from visits.services.kit.stock_place import place_of_van, store_of

LATER = NOON + timedelta(hours=1)


@pytest.fixture
def glue(house):
    return make_kit(house.business)["glue"]


@pytest.fixture
def van(house):
    return place_of_van(house.van)


def test_the_newest_is_first_with_what_its_place_then_had(house, glue, van):
    store = store_of(house.scope)
    stock_up(glue, "30.30", at=NOON)
    move_stock(way=Way(store, van), moved=[amount(glue, "10.10")], word=word(house, at=LATER))
    found = item_ledger(house.scope, glue)
    assert [(row.line.place, row.line.quantity, str(row.balance)) for row in found.rows] == [
        (van, Decimal("10.10"), "10.10"),
        (store, Decimal("-10.10"), "20.20"),
        (store, Decimal("30.30"), "30.30"),
    ]


def test_below_nought_is_shown_as_it_is(house, glue, van):
    way = Way(van, store_of(house.scope))
    move_stock(way=way, moved=[amount(glue, 5)], word=word(house), is_really_there=True)
    assert [row.is_short for row in item_ledger(house.scope, glue).rows] == [False, True]


def test_a_count_comes_last_in_its_moment_and_says_what_was_counted(house, glue, van):
    count_stock(place=van, counted=[amount(glue, 40)], word=word(house))
    bought(van, glue, 15)
    rows = item_ledger(house.scope, glue).rows
    assert [(row.line.kind, row.balance) for row in rows] == [
        ("counted", 40),
        ("counted", 55),
        ("bought", 15),
    ]
    assert rows[0].line.count.counted == 40


def test_it_is_paged_in_three_queries(house, glue, van, django_assert_num_queries):
    for n in range(PER_PAGE + 2):
        stock_up(glue, n + 1, at=NOON + timedelta(minutes=n), van=house.van)
    with django_assert_num_queries(3):
        found = item_ledger(house.scope, glue, "2")
        assert [(row.line.place.van_id, row.line.lot.code, row.line.by) for row in found.rows] == [
            (house.van.pk, "", None)
        ] * 2
    assert (found.page.number, found.page.paginator.num_pages) == (2, 2)
    assert [row.balance for row in found.rows] == [3, 1]
    assert item_ledger(make_house("Another business").scope, glue).rows == []


def test_balances_of_the_past_are_by_the_ledger_of_now(house, glue, van, django_assert_num_queries):
    stock_up(glue, 30, at=NOON, van=house.van)
    count_stock(place=van, counted=[amount(glue, 12)], word=word(house, at=LATER))
    key = (glue.pk, van.pk)
    moments = [(key, NOON - timedelta(minutes=1)), (key, NOON), (key, LATER)]
    with django_assert_num_queries(2):
        assert balances_at(house.scope, moments) == dict(zip(moments, (0, 30, 12), strict=True))
    with django_assert_num_queries(0):
        assert balances_at(house.scope, []) == {}


def test_sources_have_names_that_tell_them_apart():
    names = [source_of("cow", 12, None), source_of("wash", None, 3), source_of("cow", None, None)]
    assert names == ["trim 12", "visit 3 wash", "gone cow"]

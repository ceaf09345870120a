"""Lines of the ledger in words."""

from datetime import timedelta
from decimal import Decimal
from uuid import uuid4

import pytest

from tests.factories import (
    TUESDAY_TEN,
    blocked_foot,
    make_cow,
    make_house,
    make_kit,
    put_down,
    stock_up,
    under_way,
)
from visits.domain.kit.stock_kinds import MovementKind, UseOf, WriteOffReason
from visits.models import StockMovement
from visits.selectors.kit.count_result import count_result
from visits.selectors.kit.item_ledger import item_ledger
from visits.selectors.kit.ledger_words import told_lines
from visits.services.kit.count_stock import count_stock
from visits.services.kit.move_stock import Way, move_stock
from visits.services.kit.stock_place import place_of_van, store_of
from visits.services.kit.stock_word import Amount, StockWord
from visits.services.kit.write_off_stock import write_off_stock


@pytest.fixture
def house(db):
    return make_house()


def word_at(house, hours, note=""):
    at = TUESDAY_TEN + timedelta(hours=hours)
    return StockWord(at, at, house.owner, uuid4(), note)


def test_both_figures_of_a_count_and_of_a_correction_are_told(house):
    glue = make_kit(house.business)["glue"]
    van, store = place_of_van(house.van), store_of(house.scope)
    stock_up(glue, 500, at=TUESDAY_TEN - timedelta(days=1))
    move_stock(
        way=Way(store, van), moved=[Amount(glue, Decimal(200))], word=word_at(house, -9, "for Tuesday")
    )
    visit = under_way(house.farm, house.van)
    put_down(visit, make_cow(house.farm, "412"), blocked_foot())
    StockMovement.objects.create(
        business=house.business,
        consumable=glue,
        place=van,
        kind=MovementKind.USED,
        use_of=UseOf.BY_HAND,
        visit=visit,
        quantity=-15,
        at=TUESDAY_TEN + timedelta(hours=5),
        noted_at=TUESDAY_TEN,
    )
    count_word = word_at(house, 8)
    count_stock(place=van, counted=[Amount(glue, Decimal(150))], word=count_word)
    write_off_stock(
        place=van,
        gone=[Amount(glue, Decimal(10))],
        because=WriteOffReason.BROKEN,
        word=word_at(house, 9, "frozen"),
    )
    lines = told_lines(house.scope, glue, item_ledger(house.scope, glue).rows)
    assert [(each.what, each.more) for each in lines] == [
        ("Written off: broken or spoilt", "frozen"),
        ("Counted", "counted 150 ml; the ledger had 160 ml"),
        ("Corrected by hand", "15 ml more than noted before; the cows say 25 ml"),
        ("Used with a cow", "25 per block"),
        ("Moved here", "for Tuesday"),
        ("Moved away", "for Tuesday"),
        ("Bought", ""),
    ]
    (found,) = count_result(house.scope, van.pk, count_word.uid)
    assert (found.counted, found.had, found.missing, found.more) == (150, 160, 10, -10)
    assert count_result(make_house("Far side").scope, van.pk, count_word.uid) == []

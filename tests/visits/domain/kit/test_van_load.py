"""What goes into the van: enough, from the oldest lot, in amounts that a person would put in."""

from datetime import date, timedelta
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.kit.stock_kinds import Unit
from visits.domain.kit.van_load import ItemInPlaces, Portion, handy_amount, load_for, sureness_of_each

DAY = date(2026, 12, 1)


def portion(lot: int, quantity: str, days: int | None = None) -> Portion:
    expires = None if days is None else DAY + timedelta(days=days)
    return Portion(lot, f"L{lot}", expires, Decimal(quantity))


def in_places(
    in_van: tuple[Portion, ...] = (),
    in_store: tuple[Portion, ...] = (),
    unit: Unit = Unit.EACH,
    balance: str | None = None,
) -> ItemInPlaces:
    van = sum((each.quantity for each in in_van), Decimal(0)) if balance is None else Decimal(balance)
    return ItemInPlaces(unit, Decimal(40), van, in_van, in_store)


def test_only_what_the_van_lacks_is_loaded_oldest_date_first():
    item = in_places((portion(1, "3"),), (portion(2, "2", 5), portion(3, "20", 90)))
    load = load_for(item, Decimal(9), DAY)
    assert (load.has, load.load, load.missing, load.carried) == (3, 6, 0, 9)
    assert [(part.lot, part.quantity) for part in load.portions] == [(2, 2), (3, 4)]


def test_what_is_past_its_date_counts_nowhere():
    item = in_places((portion(1, "8", -1), portion(2, "2", 0)), (portion(3, "4", -1), portion(4, "1", 9)))
    load = load_for(item, Decimal(9), DAY)
    assert [part.lot for part in load.stale] == [1]
    assert (load.has, load.load, load.missing) == (2, 1, 6)


def test_a_van_below_nought_is_an_empty_one():
    load = load_for(in_places((), (portion(1, "40"),), balance="-5"), Decimal(4), DAY)
    assert (load.has, load.load) == (0, 4)


@pytest.mark.parametrize(
    ("lacking", "store", "unit", "pack", "amount"),
    [
        ("2.3", "40", Unit.EACH, "40", "3"),
        ("2.3", "2", Unit.EACH, "40", "2"),
        ("2.3", "2.6", Unit.EACH, "40", "2"),
        ("0.3", "0.4", Unit.EACH, "40", "0.4"),
        ("24", "60", Unit.PAIR, "50", "24"),
        ("25", "60", Unit.PAIR, "50", "50"),
        ("25", "49.5", Unit.PAIR, "50", "25"),
        ("51", "160", Unit.PAIR, "50", "100"),
        ("320", "2000", Unit.ML, "2000", "350"),
        ("320", "333", Unit.ML, "2000", "333"),
        ("1100", "2500", Unit.GRAM, "2000", "2000"),
        ("0", "40", Unit.EACH, "40", "0"),
        ("3", "0", Unit.EACH, "40", "0"),
        ("3", "-2", Unit.EACH, "40", "0"),
    ],
)
def test_amounts_are_what_a_person_would_put_in(lacking, store, unit, pack, amount):
    assert handy_amount(Decimal(lacking), Decimal(store), unit, Decimal(pack)) == Decimal(amount)


amounts = st.decimals(0, 300, places=1)


@given(wanted=amounts, van=amounts, parts=st.lists(amounts, max_size=4), unit=st.sampled_from(list(Unit)))
def test_no_more_than_the_store_has_and_never_too_little_while_it_has_enough(wanted, van, parts, unit):
    in_store = tuple(Portion(n, "", None, quantity) for n, quantity in enumerate(parts))
    load = load_for(in_places((Portion(9, "", None, van),), in_store, unit), wanted, DAY)
    store = sum(parts, Decimal(0))
    assert sum((part.quantity for part in load.portions), Decimal(0)) == load.load <= store
    assert load.carried + load.missing >= wanted
    # What lies in the store in whole pieces is used before anything is called missing.
    assert load.missing == 0 or store - load.load < 1


def test_all_together_are_as_sure_as_was_asked():
    assert sureness_of_each(0.95, 10) ** 10 == pytest.approx(0.95)
    assert sureness_of_each(0.95, 0) == 0.95

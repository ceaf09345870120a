"""Days lived through again, told by hand; the rule of thumb it is held against."""

from datetime import date, timedelta
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.bench.visits.replay_orders import Bought, Evening, KeepTheHighest, in_packs, replay

MONDAY = date(2026, 3, 2)
DAY = timedelta(days=1)
EVERY_DAY = frozenset(range(7))


def uses(*amounts: int) -> dict[date, Decimal]:
    return {MONDAY + DAY * number: Decimal(amount) for number, amount in enumerate(amounts)}


def days(*numbers: int) -> list[date]:
    return [MONDAY + DAY * number for number in numbers]


def test_what_comes_on_a_day_is_there_from_the_day_after():
    def once(evening: Evening) -> Decimal:
        return Decimal(3) if evening.day == MONDAY else Decimal(0)

    lived = replay(Bought(Decimal(4), 2), (MONDAY, MONDAY + DAY * 4), uses(1, 1, 1, 2, 3), Decimal(2), once)
    # One left on Monday, none on Tuesday; Wednesday is short, though four come on Wednesday; Friday is short again.
    assert lived.stock == [1, 0, 4, 2, 0]
    assert lived.short == days(2, 4)
    assert lived.orders == 1
    assert lived.mean_stock == pytest.approx(7 / 5)


def test_what_is_on_its_way_counts_in_the_position():
    seen = []

    def tell(evening: Evening) -> Decimal:
        seen.append((evening.on_hand, evening.position))
        return Decimal(5) if evening.day == MONDAY else Decimal(0)

    replay(Bought(Decimal(5), 2), (MONDAY, MONDAY + DAY * 3), uses(1, 1), Decimal(3), tell)
    assert seen == [(2, 2), (1, 6), (6, 6), (6, 6)]


def test_what_was_short_is_got_elsewhere():
    lived = replay(
        Bought(Decimal(1), 1), (MONDAY, MONDAY + DAY), uses(5, 1), Decimal(2), lambda evening: Decimal(0)
    )
    assert (lived.stock, lived.short) == ([0, 0], days(0, 1))


def test_the_highest_use_of_any_days_on_end_is_kept():
    rule = KeepTheHighest(uses(1, 2, 0, 4, 1), MONDAY, 2, EVERY_DAY)
    wanted = [rule(Evening(day, Decimal(1), ())) for day in days(0, 1, 2, 3, 4)]
    # Highest of two days on end until then: 1, 3, 3, 4, 5.
    assert wanted == [0, 2, 2, 3, 4]


def test_it_is_looked_at_on_its_weekdays_only():
    rule = KeepTheHighest(uses(1, 2, 0, 4, 1), MONDAY, 2, frozenset({2}))
    assert [rule(Evening(day, Decimal(1), ())) for day in days(0, 1, 2, 3)] == [0, 0, 2, 0]


@pytest.mark.parametrize(("amount", "packed"), [("-3", 0), ("0", 0), ("0.5", 4), ("4", 4), ("4.5", 8)])
def test_whole_packs(amount, packed):
    assert in_packs(Decimal(amount), Decimal(4)) == packed


@given(
    used=st.lists(st.integers(0, 9), min_size=5, max_size=40),
    start=st.integers(0, 20),
    lead=st.integers(0, 6),
    pack=st.integers(1, 12),
)
def test_nothing_is_lost_between_the_evenings(used, start, lead, pack):
    """What is there in the end is what was there, what came and what was used; short days took what was left."""
    rule = KeepTheHighest(uses(*used), MONDAY, lead + 1, EVERY_DAY)
    ordered = []

    def noted(evening: Evening) -> Decimal:
        ordered.append((evening.day, in_packs(rule(evening), Decimal(pack))))
        return rule(evening)

    last = MONDAY + DAY * (len(used) - 1)
    lived = replay(Bought(Decimal(pack), lead), (MONDAY, last), uses(*used), Decimal(start), noted)
    there, needed = [Decimal(start), *lived.stock], uses(*used)
    for number, day in enumerate(needed):
        came = there[number + 1] - max(Decimal(0), there[number] - needed[day])
        assert came >= 0
        assert came % pack == 0
        assert (day in lived.short) == (needed[day] > there[number])
    assert lived.orders == sum(1 for _, amount in ordered if amount)

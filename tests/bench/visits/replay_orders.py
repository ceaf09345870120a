"""A stretch of days lived through again: what was really used is used, and orders follow some advice."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta
from decimal import ROUND_CEILING, Decimal

from visits.domain.kit.supply_days import arrival_day

NOTHING = Decimal(0)
DAY = timedelta(days=1)


@dataclass(frozen=True)
class Bought:
    """How an item is bought: whole packs, and the days from order to arrival."""

    pack: Decimal
    lead_days: int


@dataclass(frozen=True)
class Evening:
    """What is known of the stock when the day's work is done: in the unit of the item; `coming` is (day, quantity)."""

    day: date
    on_hand: Decimal
    coming: Sequence[tuple[date, Decimal]]

    @property
    def position(self) -> Decimal:
        """What is there and what will come."""
        return self.on_hand + sum((quantity for _, quantity in self.coming), NOTHING)


Advice = Callable[[Evening], Decimal]
"""How much to order this evening; whole packs are made of it."""


@dataclass
class Replayed:
    """`short`: the days on which more was needed than was there (it was got elsewhere, the stock was empty). `stock`:
    of each evening, weekends included.
    """

    short: list[date] = field(default_factory=list)
    stock: list[Decimal] = field(default_factory=list)
    orders: int = 0

    @property
    def mean_stock(self) -> float:
        return float(sum(self.stock, NOTHING)) / len(self.stock)


def replay(
    bought: Bought, span: tuple[date, date], used: Mapping[date, Decimal], start: Decimal, advice: Advice
) -> Replayed:
    """From the first day of `span` to the last, with `start` in stock on the first morning.

    What comes on a day comes after the work (`arrival_day`); then the evening's advice is followed.
    """
    found, on_hand, day = Replayed(), start, span[0]
    coming: list[tuple[date, Decimal]] = []
    while day <= span[1]:
        needed = used.get(day, NOTHING)
        if needed > on_hand:
            found.short.append(day)
        on_hand = max(NOTHING, on_hand - needed)
        on_hand += sum((quantity for when, quantity in coming if when <= day), NOTHING)
        coming = [(when, quantity) for when, quantity in coming if when > day]
        wanted = in_packs(advice(Evening(day, on_hand, tuple(coming))), bought.pack)
        if wanted:
            found.orders += 1
            coming.append((arrival_day(day, bought.lead_days), wanted))
        found.stock.append(on_hand)
        day += DAY
    return found


def in_packs(amount: Decimal, pack: Decimal) -> Decimal:
    """The fewest whole packs that hold it; none for nought or less."""
    return max(NOTHING, (amount / pack).to_integral_value(ROUND_CEILING) * pack)


class KeepTheHighest:
    """The rule of thumb: have in stock, or coming, as much as was ever used in any `window` days on end until now.

    It is kept whenever somebody looks: on the weekdays of `looks` (Monday is 0).
    """

    def __init__(self, used: Mapping[date, Decimal], since: date, window: int, looks: frozenset[int]) -> None:
        self.used, self.window, self.looks = used, window, looks
        self.day, self.highest = since - DAY, NOTHING

    def __call__(self, evening: Evening) -> Decimal:
        self._see_until(evening.day)
        return self.highest - evening.position if evening.day.weekday() in self.looks else NOTHING

    def _see_until(self, day: date) -> None:
        while self.day < day:
            self.day += DAY
            days = (self.day - DAY * back for back in range(self.window))
            self.highest = max(self.highest, sum((self.used.get(each, NOTHING) for each in days), NOTHING))

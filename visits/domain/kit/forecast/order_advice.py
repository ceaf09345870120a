"""When and how much to order.

Method: a point and a level (s, S policy; Silver, Pyke and Thomas, Inventory and Production Management in Supply Chains,
from memory), looked at every evening. Safety is needed only until an order of tomorrow can be here: up to then the use
at the chance of service chosen is the point to order at. An order is to last for the review days besides; for these the
expected use is enough, because the list speaks again if more goes. So the level is the point and the expected use of
those days: the year replayed (tests/bench/visits) is short as seldom as with safety for all of them, with less stock.
Whole packs; never more than will be used up before its shelf life ends with the chance `USED_UP`, but one pack where
some is needed, for nobody can buy less. Days are calendar days; what comes on a day is worked with from the day after.

An order may wait until the evening on which the chance of running short before it is here comes nearest to what is
accepted: from then on the mean of the chances with its order and with that of the evening after is more. So at 95 % one
order in twenty is late in the mean, not at most; held to "at most" the year replayed has 3 % more in stock and is short
as seldom. What lacks before an order of today could be here is no reason to order; it is told as running out.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal

from visits.domain.kit.forecast.spread import Spread
from visits.domain.kit.forecast.stock_ahead import StockAhead, SupplyTerms
from visits.domain.kit.forecast.use_ahead import UseAhead
from visits.domain.kit.supply_days import arrival_day

USED_UP = 0.9
TOMORROW = timedelta(days=1)
CENT = Decimal("0.01")


@dataclass(frozen=True)
class OrderLevels:
    """Order when there is less than `point`; up to `level`. What is on order counts."""

    point: Decimal
    level: Decimal


def order_levels(ahead: UseAhead, terms: SupplyTerms) -> OrderLevels:
    """In the unit of the consumable."""
    safe = ahead.until(arrival_day(ahead.today + TOMORROW, terms.lead_days))
    more = ahead.until(protected_until(terms, ahead.today)).mean - safe.mean
    point = safe.quantile(terms.service)
    return OrderLevels(point, point + Decimal(max(0.0, more)).quantize(CENT))


def protected_until(terms: SupplyTerms, today: date) -> date:
    """The last day that an order of today is to last for."""
    return arrival_day(today + timedelta(days=terms.review_days), terms.lead_days)


def packs_up_to(ahead: UseAhead, level: Decimal, position: Decimal, terms: SupplyTerms) -> int:
    """Whole packs from what is there and on order (`position`) up to `level`, one at least."""
    packs = int(((level - position) / terms.pack).to_integral_value(ROUND_CEILING))
    most = most_used_up(ahead, terms)
    if most is not None:
        packs = min(packs, int(((most - position) / terms.pack).to_integral_value(ROUND_FLOOR)))
    return max(1, packs)


def most_used_up(ahead: UseAhead, terms: SupplyTerms) -> Decimal | None:
    """The most that may be there and on order so that all of it is used before what is ordered today goes past its
    date, with the chance `USED_UP`. None where it keeps."""
    if terms.shelf_days is None:
        return None
    last = arrival_day(ahead.today, terms.lead_days) + timedelta(days=terms.shelf_days)
    return ahead.until(last).quantile(1 - USED_UP)


def last_day_to_order(
    ahead: UseAhead, stock: StockAhead, lost: Sequence[float], terms: SupplyTerms
) -> date | None:
    """The last day on which an order still comes in time; None where that is beyond all days told. `lost`: what is
    expected to have gone past its date by the end of each day."""
    last = min(len(ahead.so_far), len(lost)) - 1
    evening = ahead.today
    while (here := _number(ahead, evening, terms)) < last:
        later = min(_number(ahead, evening + TOMORROW, terms), last)
        waits = max(
            (_chance_short(ahead, stock, lost, day) for day in range(here + 1, later + 1)), default=0.0
        )
        if min(waits, (waits + _chance_short(ahead, stock, lost, here)) / 2) > 1 - terms.service:
            return evening
        evening += TOMORROW
    return None


def _number(ahead: UseAhead, ordered: date, terms: SupplyTerms) -> int:
    """How many days from today on an order of that day is here."""
    return (arrival_day(ordered, terms.lead_days) - ahead.today).days


def _chance_short(ahead: UseAhead, stock: StockAhead, lost: Sequence[float], number: int) -> float:
    """That more was used by the end of that day than was there without another order."""
    there = stock.there_on(ahead.today + timedelta(days=number), ahead.today) - Decimal(
        lost[number]
    ).quantize(CENT)
    return Spread.of_cells(ahead.step, ahead.so_far[number]).chance_above(there)

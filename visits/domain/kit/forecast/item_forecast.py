"""The forecast of one consumable: how much, when it may run out, what to order by when, what will go past its date.

Method: day by day the use of the booked visits and of the open work is convolved exactly (`use_ahead.py`). Running out
and what goes past its date are followed day by day (`drawn_down.py`), when and how much to order: `order_advice.py`.
Unit: that of the consumable. Today's visits that are not finished are still to come.
"""

from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal

from visits.domain.kit.forecast.drawn_down import DrawnDown, drawn_down
from visits.domain.kit.forecast.order_advice import (
    last_day_to_order,
    order_levels,
    packs_up_to,
    protected_until,
)
from visits.domain.kit.forecast.spread import Spread
from visits.domain.kit.forecast.stock_ahead import StockAhead, SupplyTerms
from visits.domain.kit.forecast.use_ahead import UseAhead
from visits.domain.kit.supply_days import arrival_day

LONGEST = 400
"""Days. Lots that last longer are not looked at yet."""
WEEK = 7
DAYS = 28


@dataclass(frozen=True)
class DayAhead:
    """Use from today to the end of `day`; `run_out` is the chance that it has gone beyond the stock by then."""

    day: date
    expected: float
    q50: Decimal
    q80: Decimal
    q95: Decimal
    run_out: float


@dataclass(frozen=True)
class ItemForecast:
    """One consumable, as the forecast sees it from today on.

    `reorder_point`: order when what is there and on order comes down to less than this. `order_by` is the last day on
    which an order still comes in time, None where that is beyond the days looked at. `order_quantity` is what to order
    today; 0 where that may wait for the review days. `cover_days`: days that the stock is expected to last without an
    order, None where there is no use to come. `expiry_loss` is what is expected to go past its date. `expected`, `q50`,
    `q80`, `q95`: use from today until what is ordered today is here (`here_on`). `visits` is how many visits it was
    learned from, 0: published rates alone.
    """

    consumable: int
    days: tuple[DayAhead, ...]
    reorder_point: Decimal
    order_quantity: Decimal
    order_by: date | None
    cover_days: float | None
    expiry_loss: float
    expected: float
    q50: Decimal
    q80: Decimal
    q95: Decimal
    here_on: date
    visits: int


def forecast_item(
    consumable: int, ahead: UseAhead, stock: StockAhead, terms: SupplyTerms, days: int = DAYS
) -> ItemForecast:
    """`ahead` reaches to `days_needed` at least; ValueError where it does not."""
    today = ahead.today
    if len(ahead.by_day) < days_needed(terms, today, days):
        raise ValueError("the use ahead is told for too few days")
    here_on = arrival_day(today, terms.lead_days)
    lead, levels = ahead.until(here_on), order_levels(ahead, terms)
    down = drawn_down(ahead, stock, _days_to_follow(ahead, stock))
    order_by = last_day_to_order(ahead, stock, down.lost, terms)
    is_wanted = order_by is not None and order_by < today + timedelta(days=terms.review_days)
    lost = Decimal(down.lost[(protected_until(terms, today) - today).days]).quantize(Decimal("0.01"))
    packs = packs_up_to(ahead, levels.level, stock.position - lost, terms) if is_wanted else 0
    return ItemForecast(
        consumable=consumable,
        days=tuple(_day(ahead, down, number) for number in range(days)),
        reorder_point=levels.point,
        order_quantity=packs * terms.pack,
        order_by=order_by,
        cover_days=cover_days(ahead, stock.balance),
        expiry_loss=down.lost[-1],
        expected=lead.mean,
        q50=lead.quantile(0.5),
        q80=lead.quantile(0.8),
        q95=lead.quantile(0.95),
        here_on=here_on,
        visits=ahead.model.visits,
    )


def days_needed(terms: SupplyTerms, today: date, days: int = DAYS) -> int:
    """How many days of use ahead a forecast of `days` days asks for."""
    return max(days, (protected_until(terms, today) - today).days + 1)


def cover_days(ahead: UseAhead, balance: Decimal) -> float | None:
    """Days from this morning until the expected use has taken what is there; None where none is expected. Beyond the
    days told it goes on at the pace of a usual week."""
    left = float(balance)
    for number, cells in enumerate(ahead.by_day):
        expected = Spread.of_cells(ahead.step, cells).mean
        if expected > 0 and left <= expected:
            return number + max(left, 0.0) / expected
        left -= expected
    week = ahead.model.of_open_day().mean * len(ahead.model.open_work.weekdays)
    return len(ahead.by_day) + left / week * WEEK if week else None


def _day(ahead: UseAhead, down: DrawnDown, number: int) -> DayAhead:
    day = ahead.today + timedelta(days=number)
    use = ahead.until(day)
    return DayAhead(
        day, use.mean, use.quantile(0.5), use.quantile(0.8), use.quantile(0.95), down.run_out[number]
    )


def _days_to_follow(ahead: UseAhead, stock: StockAhead) -> int:
    """All days told, and on until the last date of a lot, a year at most."""
    last = max((lot.expires_on for lot in stock.lots), default=ahead.today)
    return max(len(ahead.by_day), min((last - ahead.today).days + 1, LONGEST))

"""How the stock is drawn down day by day: when it may run out, and what goes past its date before it is used.

Method: exact. What is gone of the stock (used, or past its date) is followed as chances in steps. Each day the day's
use is convolved on to it; what has gone beyond all that was there and had come has run out, and stays so (first
passage). At the end of a lot's last day at least all that lay in lots up to that date is gone: oldest date first,
whatever of them is left then is lost. What comes on a day is worked with from the day after. Where amounts are not
whole steps the lots are taken down to the step below.
"""

from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal

import numpy as np

from visits.domain.kit.forecast.spread import Floats, steps_within
from visits.domain.kit.forecast.stock_ahead import StockAhead
from visits.domain.kit.forecast.use_ahead import UseAhead


@dataclass(frozen=True)
class DrawnDown:
    """By the end of the n-th day: `run_out[n]` is the chance that the stock has run out by then, `lost[n]` what is
    expected to have gone past its date, in the unit; what is past it today is among it."""

    run_out: tuple[float, ...]
    lost: tuple[float, ...]


def drawn_down(ahead: UseAhead, stock: StockAhead, days: int) -> DrawnDown:
    """From today on, so many days."""
    gone = gone_by_lots(stock)
    past = max((total for day, total in gone if day < ahead.today), default=Decimal(0))
    cells, lost, ended = _at(steps_within(past, ahead.step)), float(past), 0.0
    run_out, losses = [], []
    for number in range(days):
        day = ahead.today + timedelta(days=number)
        there = stock.there_on(day, ahead.today)
        cells = np.convolve(cells, ahead.of_day(number))
        kept = cells[: steps_within(there, ahead.step) + 1] if there >= 0 else np.zeros(1)
        ended = min(1.0, max(ended, 1.0 - float(kept.sum())))
        run_out.append(ended)
        cells = kept
        for total in (total for last, total in gone if last == day):
            cells, more = _let_go(cells, steps_within(total, ahead.step))
            lost += more * float(ahead.step)
        losses.append(lost)
    return DrawnDown(tuple(run_out), tuple(losses))


def gone_by_lots(stock: StockAhead) -> list[tuple[date, Decimal]]:
    """(last day of a lot, all that lies in lots up to that day, at most the balance), by day."""
    found, total = [], Decimal(0)
    for lot in sorted(stock.lots, key=lambda lot: lot.expires_on):
        total = min(total + lot.quantity, max(stock.balance, Decimal(0)))
        found.append((lot.expires_on, total))
    return found


def _at(steps: int) -> Floats:
    cells = np.zeros(steps + 1)
    cells[steps] = 1.0
    return cells


def _let_go(cells: Floats, total: int) -> tuple[Floats, float]:
    """At least `total` steps are gone now; the steps expected to be lost by that."""
    below = cells[:total]
    lost = float(np.dot(below, total - np.arange(len(below))))
    found = np.zeros(max(len(cells), total + 1))
    found[: len(cells)] = cells
    found[:total] = 0.0
    found[total] += below.sum()
    return found, lost

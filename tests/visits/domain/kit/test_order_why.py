"""Why, and how pressing."""

from datetime import date, timedelta
from decimal import Decimal

import pytest

from visits.domain.kit.forecast.item_forecast import DayAhead, ItemForecast
from visits.domain.kit.order_why import (
    Pressing,
    how_pressing,
    order_why,
)
from visits.domain.kit.stock_kinds import Unit

TODAY = date(2026, 11, 30)


def forecast(
    order_by: int | None, quantity: int = 40, run_out: tuple[float, ...] = (0.1, 0.2)
) -> ItemForecast:
    days = tuple(
        DayAhead(TODAY + timedelta(days=number), 1.0, Decimal(1), Decimal(2), Decimal(3), chance)
        for number, chance in enumerate(run_out)
    )
    return ItemForecast(
        consumable=1,
        days=days,
        reorder_point=Decimal(20),
        order_quantity=Decimal(quantity),
        order_by=None if order_by is None else TODAY + timedelta(days=order_by),
        cover_days=4.0,
        expiry_loss=0.0,
        expected=12.4,
        q50=Decimal(12),
        q80=Decimal(15),
        q95=Decimal("18.5"),
        here_on=TODAY + timedelta(days=1),
        visits=9,
    )


@pytest.mark.parametrize(
    ("told", "pressing"),
    [
        (forecast(0), Pressing.TODAY),
        (forecast(-1), Pressing.TODAY),
        (forecast(1), Pressing.SOON),
        (forecast(None), Pressing.SOON),
        (forecast(None, quantity=0), Pressing.NOT_YET),
        (forecast(3, quantity=0), Pressing.NOT_YET),
    ],
)
def test_today_where_tomorrow_may_be_too_late(told, pressing):
    assert how_pressing(told, TODAY) is pressing


def test_the_sentence_names_day_use_and_what_is_there():
    assert order_why(forecast(0), Unit.EACH, Decimal(9)) == (
        "Until it can be here (Tue 1 Dec) about 12 will be used, hardly more than 19; 9 left now."
    )
    assert order_why(forecast(0), Unit.ML, Decimal(-5)).endswith(
        "12 ml will be used, hardly more than 18.5 ml; none left now."
    )

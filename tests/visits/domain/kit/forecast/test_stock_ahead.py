from datetime import date
from decimal import Decimal

from visits.domain.kit.forecast.stock_ahead import OnOrder, StockAhead

TODAY = date(2026, 11, 30)
STOCK = StockAhead(
    Decimal(-2), (OnOrder(date(2026, 11, 20), Decimal(5)), OnOrder(date(2026, 12, 2), Decimal("0.5")))
)


def test_what_is_there_and_on_order_is_counted_together():
    assert STOCK.position == Decimal("3.5")


def test_what_comes_is_worked_with_from_the_day_after_and_what_is_late_from_tomorrow():
    days = [date(2026, 11, 30), date(2026, 12, 1), date(2026, 12, 2), date(2026, 12, 3)]
    assert [STOCK.there_on(day, TODAY) for day in days] == [-2, 3, 3, Decimal("3.5")]

"""Why something is to be ordered, and by when, in a sentence."""

from datetime import date
from decimal import Decimal
from enum import StrEnum

from visits.domain.kit.forecast.item_forecast import ItemForecast
from visits.domain.kit.item_outlook import expected_words, most_of
from visits.domain.kit.read_quantity import quantity_words, seen_words
from visits.domain.kit.stock_kinds import Unit


class Pressing(StrEnum):
    """How long an order may wait."""

    TODAY = "today"
    SOON = "soon"
    NOT_YET = "not_yet"


def how_pressing(forecast: ItemForecast, today: date) -> Pressing:
    """TODAY where an order of tomorrow may come too late; SOON where it is wanted until the next look at the list."""
    if forecast.order_quantity <= 0:
        return Pressing.NOT_YET
    late = forecast.order_by is not None and forecast.order_by <= today
    return Pressing.TODAY if late else Pressing.SOON


def order_why(forecast: ItemForecast, unit: Unit, there: Decimal) -> str:
    """Expected use until what is ordered today can be here, what it hardly exceeds (95 %), and what is there."""
    day = forecast.here_on
    most = quantity_words(most_of(unit, forecast.q95), unit)
    has = seen_words(there, unit) if there > 0 else "none"
    return (
        f"Until it can be here ({day:%a} {day.day} {day:%b}) {expected_words(unit, forecast.expected)} will be used, "
        f"hardly more than {most}; {has} left now."
    )

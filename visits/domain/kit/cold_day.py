"""What a cold day means for something that sets or works only above a temperature."""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

NEAR = Decimal(3)
"""A typed forecast may be wrong by as much (own figure)."""


class Cold(StrEnum):
    """How a day stands to a lowest working temperature."""

    NOT_TYPED = "not_typed"
    WARM_ENOUGH = "warm_enough"
    NEAR = "near"
    AT_TIMES = "at_times"
    ALL_DAY = "all_day"

    @property
    def is_warned_of(self) -> bool:
        return self in (Cold.NEAR, Cold.AT_TIMES, Cold.ALL_DAY)


@dataclass(frozen=True)
class DayWeather:
    """How cold and how warm a day is said to become, degrees Celsius; the warmest is not always said."""

    lowest: Decimal
    highest: Decimal | None


def how_cold(limit: Decimal, weather: DayWeather | None) -> Cold:
    """`limit`: degrees Celsius below which it is not to be worked with, as on its label."""
    if weather is None:
        return Cold.NOT_TYPED
    if weather.highest is not None and weather.highest < limit:
        return Cold.ALL_DAY
    if weather.lowest < limit:
        return Cold.AT_TIMES
    return Cold.NEAR if weather.lowest < limit + NEAR else Cold.WARM_ENOUGH


def cold_words(name: str, limit: Decimal, weather: DayWeather | None) -> str:
    """The sentence for the page; empty where there is nothing to say. What to do with it, its maker's sheet says."""
    cold = how_cold(limit, weather)
    if weather is None or not cold.is_warned_of:
        return ""
    low, least = degrees(weather.lowest), degrees(limit)
    if cold is Cold.NEAR:
        return f"{name}: {low} is close to its lowest, {least}. Keep it warm on the way."
    if cold is Cold.AT_TIMES:
        return f"{name}: {low} is said, its label stops at {least}. Keep it warm until it is used, and the claw dry."
    return f"{name}: colder all day than the {least} of its label ({low} is said). Keep it warm, or do without it."


def degrees(value: Decimal) -> str:
    """`8 °C`, with a true minus below nought."""
    shown = f"{value.normalize():f}".replace("-", "\N{MINUS SIGN}")
    return f"{shown} °C"


def weather_words(weather: DayWeather) -> str:
    """`−2 °C to 5 °C`, or the coldest alone."""
    low = degrees(weather.lowest)
    return low if weather.highest is None else f"{low} to {degrees(weather.highest)}"

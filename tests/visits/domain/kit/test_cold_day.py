"""A typed forecast against the lowest temperature on a label, in words."""

from decimal import Decimal

import pytest

from visits.domain.kit.cold_day import Cold, DayWeather, cold_words, how_cold, weather_words


def weather(lowest: int, highest: int | None = None) -> DayWeather:
    return DayWeather(Decimal(lowest), None if highest is None else Decimal(highest))


@pytest.mark.parametrize(
    ("said", "cold"),
    [
        (None, Cold.NOT_TYPED),
        (weather(12, 20), Cold.WARM_ENOUGH),
        (weather(11), Cold.WARM_ENOUGH),
        (weather(10, 20), Cold.NEAR),
        (weather(8, 9), Cold.NEAR),
        (weather(7, 9), Cold.AT_TIMES),
        (weather(-4, 8), Cold.AT_TIMES),
        (weather(-4), Cold.AT_TIMES),
        (weather(-4, 7), Cold.ALL_DAY),
    ],
)
def test_a_day_stands_to_the_limit_of_eight_degrees(said, cold):
    assert how_cold(Decimal(8), said) is cold


def test_words_name_the_thing_the_cold_and_the_label():
    words = cold_words("Glue", Decimal("8.0"), weather(-3, 9))
    assert words == (
        "Glue: \N{MINUS SIGN}3 °C is said, its label stops at 8 °C. Keep it warm until it is used, and the claw dry."
    )
    assert "all day" in cold_words("Glue", Decimal(8), weather(-3, 5))
    assert cold_words("Glue", Decimal(8), weather(9)).endswith("Keep it warm on the way.")


def test_nothing_is_said_where_nothing_is_typed_or_it_is_warm():
    assert cold_words("Glue", Decimal(8), None) == cold_words("Glue", Decimal(8), weather(15)) == ""


def test_the_weather_in_words():
    assert weather_words(weather(-2, 5)) == "\N{MINUS SIGN}2 °C to 5 °C"
    assert weather_words(DayWeather(Decimal("10.50"), None)) == "10.5 °C"

"""A typed forecast: one a day, the last one counts, nonsense is refused."""

from datetime import timedelta
from decimal import Decimal

import pytest

from tests.factories import NOON, make_house
from visits.domain.kit.cold_day import DayWeather
from visits.models import TypedWeather
from visits.services.kit.type_weather import WeatherRefused, type_weather


@pytest.fixture
def house(db):
    return make_house()


def typed(house, lowest, highest=None, days=1):
    weather = DayWeather(Decimal(lowest), None if highest is None else Decimal(highest))
    day = NOON.date() + timedelta(days=days)
    return type_weather(business=house.business, day=day, weather=weather, at=NOON, by=house.trimmer)


def test_typed_again_it_takes_the_place_of_the_first(house):
    typed(house, "-3.5", "4")
    typed(house, "-1")
    (row,) = TypedWeather.objects.within(house.scope)
    assert (row.lowest_celsius, row.highest_celsius, row.by) == (-1, None, house.trimmer)


@pytest.mark.parametrize(
    ("lowest", "highest", "days", "said"),
    [
        ("-61", None, 1, "cannot be meant"),
        ("3", "61", 1, "cannot be meant"),
        ("3", "2", 1, "below its coldest"),
        ("3", None, -1, "Type the forecast of today"),
        ("3", None, 31, "Type the forecast of today"),
    ],
)
def test_no_such_weather(house, lowest, highest, days, said):
    with pytest.raises(WeatherRefused, match=said):
        typed(house, lowest, highest, days)

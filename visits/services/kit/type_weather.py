"""A day's forecast is typed in, from whatever source the trimmer trusts."""

from datetime import date, datetime
from decimal import Decimal

from django.db import transaction

from trimops.accounts.models import Business, User
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope
from visits.domain.kit.cold_day import DayWeather
from visits.models import TypedWeather

COLDEST, WARMEST = Decimal(-60), Decimal(60)
MOST_DAYS = 30


class WeatherRefused(RuleBroken):
    """No day has such weather; the message says what to mend."""

    code = "weather_refused"


@transaction.atomic
def type_weather(
    *, business: Business, day: date, weather: DayWeather, at: datetime, by: User
) -> TypedWeather:
    """Keep it for the day; typed again, it takes the place of what was typed before. WeatherRefused."""
    _refuse_nonsense(day, weather, local_day(at, business.zone))
    rows = TypedWeather.objects.within(Scope(business.pk)).filter(day=day)
    row = rows.locked().first()
    if row is None:
        row = TypedWeather(business=business, day=day)
        row.lowest_celsius, row.by, row.noted_at = weather.lowest, by, at
        # because: two who type at once must not both insert
        TypedWeather.objects.bulk_create([row], ignore_conflicts=True)
        row = rows.locked().get()
    row.lowest_celsius, row.highest_celsius = weather.lowest, weather.highest
    row.by, row.noted_at = by, at
    row.full_clean()
    row.save()
    return row


def _refuse_nonsense(day: date, weather: DayWeather, today: date) -> None:
    if not 0 <= (day - today).days <= MOST_DAYS:
        raise WeatherRefused(f"Type the forecast of today or of one of the next {MOST_DAYS} days.")
    for value in (weather.lowest, weather.highest):
        if value is not None and not COLDEST <= value <= WARMEST:
            raise WeatherRefused(f"{value} °C cannot be meant: {COLDEST} to {WARMEST} °C can be typed.")
    if weather.highest is not None and weather.highest < weather.lowest:
        raise WeatherRefused("The warmest of the day is below its coldest: look at the two again.")

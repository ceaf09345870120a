"""The week problem document as it is written: every key, its type and its limits (pydantic, strict)."""

import re
from datetime import date
from typing import Annotated, Literal

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field

from visits.domain.planning.instant_text import plain_instant

DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")


def _day(text: str) -> str:
    if not DAY.fullmatch(text):
        raise ValueError("is not a day written as 2026-03-04")
    try:
        date.fromisoformat(text)
    except ValueError:
        raise ValueError("is not a day of the calendar") from None
    return text


def _whole(value: object) -> object:
    """28.0 is the same number of JSON as 28 (RFC 8259 knows no kinds of numbers)."""
    return int(value) if isinstance(value, float) and value.is_integer() else value


Name = Annotated[str, Field(min_length=1)]
Instant = Annotated[str, AfterValidator(plain_instant)]
Day = Annotated[str, AfterValidator(_day)]
Minutes = Annotated[float, Field(ge=0, allow_inf_nan=False)]
Km = Annotated[float, Field(ge=0, le=1_000_000_000, allow_inf_nan=False)]
Money = Annotated[float, Field(ge=0, le=1_000_000_000_000, allow_inf_nan=False)]
Count = Annotated[int, BeforeValidator(_whole), Field(ge=0, le=1_000_000)]
Latitude = Annotated[float, Field(ge=-90, le=90, allow_inf_nan=False)]
Longitude = Annotated[float, Field(ge=-180, le=180, allow_inf_nan=False)]
Positive = Annotated[float, Field(gt=0, le=1000, allow_inf_nan=False)]


class Form(BaseModel):
    """Strict: no key that is not named here, no text for a number, no true or false for a number."""

    model_config = ConfigDict(strict=True, extra="forbid", frozen=True)


class BaseForm(Form):
    """Where a van starts and ends its day."""

    id: Name
    lat: Latitude
    lon: Longitude


class SiteForm(Form):
    """A farm. `hygiene` 0 is the cleanest."""

    id: Name
    lat: Latitude
    lon: Longitude
    hygiene: Count = 0


class MatrixForm(Form):
    """Travel by table: row = from, column = to."""

    kind: Literal["matrix"]
    places: list[Name]
    minutes: list[list[Minutes]]
    km: list[list[Km]]


class EstimateForm(Form):
    """Travel by geodesic x circuity at a steady speed, plus minutes per leg."""

    kind: Literal["estimate"]
    circuity: Positive
    kmh: Positive
    minutes_per_leg: Minutes


class MealForm(Form):
    """A break that begins between `earliest` and `latest`."""

    minutes: Minutes
    earliest: Instant
    latest: Instant


class ShiftForm(Form):
    """One crew's day."""

    id: Name
    crew: Name
    base: Name
    start: Instant
    end: Instant
    max_work_minutes: Minutes | None = None
    max_cows: Count | None = None
    meal: MealForm | None = None
    cost_fixed: Money = 0
    cost_per_work_hour: Money = 0
    cost_per_km: Money = 0


class WindowForm(Form):
    """A stretch in which a job may be done, whole."""

    start: Instant
    end: Instant


class FixedForm(Form):
    """A promised shift and start."""

    shift: Name
    start: Instant


class JobForm(Form):
    """One visit to plan."""

    id: Name
    site: Name
    minutes: Minutes
    windows: list[WindowForm]
    cows: Count = 0
    crews: list[Name] | None = None
    due: Day | None = None
    late_cost_per_day: Money = 0
    leave_out_cost: Money | None = None
    fixed: FixedForm | None = None

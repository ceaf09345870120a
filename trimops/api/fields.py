"""Fields whose description says no more and no less than what is taken."""

import re
from datetime import date, datetime, time
from typing import Any

from drf_spectacular.types import OpenApiTypes
from drf_spectacular.utils import extend_schema_field
from rest_framework import serializers

FIRST_YEAR, LAST_YEAR = 1990, 2100
CLOCK = r"^([01][0-9]|2[0-3]):[0-5][0-9]$"


@extend_schema_field(OpenApiTypes.DATE)
class Day(serializers.DateField):
    """A day of this work: from 1990 to 2100."""

    default_error_messages = {"far": f"A day from {FIRST_YEAR} to {LAST_YEAR} is meant."}

    def __init__(self, **options: Any) -> None:
        super().__init__(**{"input_formats": ["iso-8601"], **options})

    def to_internal_value(self, value: Any) -> date:
        day: date = super().to_internal_value(value)
        if not FIRST_YEAR <= day.year <= LAST_YEAR:
            self.fail("far")
        return day


@extend_schema_field(OpenApiTypes.DATETIME)
class Moment(serializers.DateTimeField):
    """An instant with its offset, from 1990 to 2100; read, it is aware."""

    default_error_messages = {"far": f"A moment from {FIRST_YEAR} to {LAST_YEAR} is meant."}

    def to_internal_value(self, value: Any) -> datetime:
        moment: datetime = super().to_internal_value(value)
        if not FIRST_YEAR <= moment.year <= LAST_YEAR:
            self.fail("far")
        return moment


@extend_schema_field({"type": "string", "pattern": CLOCK, "examples": ["05:30"]})
class ClockTime(serializers.Field):  # type: ignore[type-arg]
    """An hour on the farm's own clock: 05:30."""

    default_error_messages = {"form": "Write the hour as 05:30."}

    def to_internal_value(self, data: Any) -> time:
        if not isinstance(data, str) or not re.fullmatch(CLOCK, data):
            self.fail("form")
        return time.fromisoformat(data)

    def to_representation(self, value: time) -> str:
        return f"{value:%H:%M}"


class Exactly(serializers.RegexField):
    """Text that is of this pattern from its first sign to its last: no blank round it is cut away in silence."""

    def __init__(self, pattern: str, **options: Any) -> None:
        super().__init__(pattern, trim_whitespace=False, **options)

    def to_internal_value(self, data: Any) -> str:
        text = str(super().to_internal_value(data))
        # because: Python's $ also lies before a line feed at the end, and that of the described pattern does not
        if text.endswith("\n"):
            self.fail("invalid")
        return text


class OneOf(serializers.ChoiceField):
    """One of the words of a labelled enum, read as its member."""

    def __init__(self, kind: Any, **options: Any) -> None:
        self.kind = kind
        super().__init__(choices=[(member.value, member.label) for member in kind], **options)

    def to_internal_value(self, data: Any) -> Any:
        return self.kind(super().to_internal_value(data))

    def to_representation(self, value: Any) -> Any:
        return getattr(value, "value", value)


def many(kind: Any, *, most: int, least: int = 0, **options: Any) -> Any:
    """A list of `least` to `most` such contents."""
    limits = {"max_length": most, **({"min_length": least} if least else {})}
    return kind(many=True, **limits, **options)

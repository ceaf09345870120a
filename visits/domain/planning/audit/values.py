"""JSON values to the exact quantities the audit counts in.

Instants are whole microseconds since 1970 UTC, durations whole microseconds, distances whole metres,
money and bare numbers exact fractions: no sum in the audit is ever rounded by floating point.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from fractions import Fraction
from functools import lru_cache
from typing import Generic, TypeVar

T = TypeVar("T")

EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
MICROSECOND = timedelta(microseconds=1)
MINUTE = 60_000_000
DAY_LENGTH = 24 * 60 * MINUTE


class Misread(ValueError):
    """The value is not of its kind; the message is the sentence for the breach."""


@dataclass(frozen=True)
class Kind(Generic[T]):
    """How to read a value, and what stands in for it when it cannot be read."""

    read: Callable[[object], T]
    instead: T


def _text(value: object) -> str:
    if not isinstance(value, str) or not value:
        raise Misread("is not a text")
    return value


def _sentence(value: object) -> str:
    if not _text(value).strip():
        raise Misread("is not a text")
    return str(value)


def _number(value: object) -> Fraction:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise Misread("is not a number")
    if isinstance(value, float) and not math.isfinite(value):
        raise Misread("is not a finite number")
    return Fraction(value) if isinstance(value, int) else _as_written(value)


@lru_cache(maxsize=100_000)
def _as_written(value: float) -> Fraction:
    """The decimal as it stands in the document, not the binary fraction behind it. Kept: travel tables repeat."""
    return Fraction(repr(value))


def _amount(value: object) -> Fraction:
    amount = _number(value)
    if amount < 0:
        raise Misread("is below 0")
    return amount


def _whole(value: object) -> int:
    number = _number(value)
    if number.denominator != 1:
        raise Misread("is not a whole number")
    return int(number)


def _count(value: object) -> int:
    return int(_amount(_whole(value)))


def _instant(value: object) -> int:
    if not isinstance(value, str):
        raise Misread("is not an instant")
    day, _, clock = value.partition("T")
    midnight = clock.startswith("24")  # ISO 8601 lets a day end at 24:00
    try:
        moment = datetime.fromisoformat(f"{day}T{'00' + clock[2:] if midnight else clock}")
    except ValueError as wrong:
        raise Misread("is not an ISO 8601 instant") from wrong
    if moment.tzinfo is None:
        raise Misread("has no offset from UTC")
    if not 1900 <= moment.year <= 2200:
        raise Misread("is not between the years 1900 and 2200")
    count = (moment - EPOCH) // MICROSECOND
    offset = (moment.utcoffset() or timedelta()) // MICROSECOND
    if offset % MINUTE or (midnight and (count + offset) % DAY_LENGTH):
        raise Misread("is not an ISO 8601 instant")
    return count + DAY_LENGTH * midnight


def _day(value: object) -> date:
    if not isinstance(value, str):
        raise Misread("is not a day")
    try:
        return date.fromisoformat(value)
    except ValueError as wrong:
        raise Misread("is not an ISO 8601 day") from wrong


TEXT = Kind(_text, "")
SENTENCE = Kind(_sentence, "")
NUMBER = Kind(_number, Fraction(0))
AMOUNT = Kind(_amount, Fraction(0))
MINUTES = Kind(lambda value: round(_amount(value) * MINUTE), 0)
SIGNED_MINUTES = Kind(lambda value: round(_number(value) * MINUTE), 0)
METRES = Kind(lambda value: _number(value) * 1000, Fraction(0))
WHOLE = Kind(_whole, 0)
COUNT = Kind(_count, 0)
INSTANT = Kind(_instant, 0)
DAY = Kind(_day, date(2000, 1, 1))

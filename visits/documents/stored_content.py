"""What stands on an issued paper as JSON, and back: so that the same paper can be drawn again, years later.

A content is a frozen dataclass of plain values, tuples and further dataclasses. Read back, a key that the class does
not know any more is left out, and a field that was not there yet has its default.
"""

from collections.abc import Callable, Mapping
from dataclasses import fields, is_dataclass
from datetime import date, datetime
from decimal import Decimal
from enum import Enum
from functools import cache
from types import UnionType
from typing import TypeVar, get_args, get_origin, get_type_hints

C = TypeVar("C")


_FROM_TEXT: Mapping[object, Callable[[str], object]] = {
    datetime: datetime.fromisoformat,
    date: date.fromisoformat,
    Decimal: Decimal,
}


class ContentUnreadable(ValueError):
    """What was stored does not fit the class."""


def to_stored(value: object) -> object:
    """Values that a JSON column takes. TypeError for what no content may hold."""
    if is_dataclass(value) and not isinstance(value, type):
        return {field.name: to_stored(getattr(value, field.name)) for field in fields(value)}
    if isinstance(value, tuple):
        return [to_stored(item) for item in value]
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, Decimal):
        return str(value)
    if isinstance(value, date):
        return value.isoformat()
    if value is None or isinstance(value, str | int | float):
        return value
    raise TypeError(f"a stored paper holds no {type(value).__name__}")


def from_stored(kind: type[C], stored: object) -> C:
    """The content of class `kind`. ContentUnreadable when a field that must be there is not, or is of another kind."""
    try:
        content = _read(kind, stored)
    except (TypeError, ValueError, ArithmeticError) as fault:
        raise ContentUnreadable(f"{kind.__name__}: {fault}") from fault
    assert isinstance(content, kind)
    return content


@cache
def _hints(kind: type) -> Mapping[str, object]:
    return get_type_hints(kind)


def _read(kind: object, stored: object) -> object:
    if isinstance(kind, type) and is_dataclass(kind):
        return _read_dataclass(kind, stored)
    if isinstance(kind, UnionType):
        (inner,) = [part for part in get_args(kind) if part is not type(None)]
        return None if stored is None else _read(inner, stored)
    if get_origin(kind) is tuple:
        if not isinstance(stored, list):
            raise TypeError(f"a list was expected, not {stored!r}")
        return tuple(_read(get_args(kind)[0], item) for item in stored)
    return _read_plain(kind, stored)


def _read_dataclass(kind: type, stored: object) -> object:
    if not isinstance(stored, dict):
        raise TypeError(f"an object was expected for {kind.__name__}, not {stored!r}")
    hints = _hints(kind)
    known = [field.name for field in fields(kind) if field.name in stored]
    return kind(**{name: _read(hints[name], stored[name]) for name in known})


def _read_plain(kind: object, stored: object) -> object:
    if kind in _FROM_TEXT and isinstance(stored, str):
        return _FROM_TEXT[kind](stored)
    if isinstance(kind, type) and issubclass(kind, Enum):
        return kind(stored)
    if type(stored) is not kind:
        raise TypeError(f"{kind} was expected, not {stored!r}")
    return stored

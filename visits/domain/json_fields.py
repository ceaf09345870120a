"""Reading JSON from outside: every fault is noted with the exact place, and what cannot be read becomes empty.

The reader never raises: it goes on to find the next fault, so that everything to be mended is told at once.
"""

import re
from dataclasses import dataclass
from datetime import UTC, datetime
from decimal import Decimal, InvalidOperation
from enum import StrEnum
from typing import TypeVar
from uuid import UUID

E = TypeVar("E", bound=StrEnum)
T = TypeVar("T")

# NUL cannot be stored, half a surrogate pair is no character; other control signs say nothing to a reader.
_NO_TEXT = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f\ud800-\udfff]")
# Far enough off that no sum of two such moments leaves the calendar.
FIRST_YEAR, LAST_YEAR = 1970, 2999


@dataclass(frozen=True)
class FieldFault:
    """One thing to mend: where (`content.entry.feet[0].foot`) and why."""

    field: str
    reason: str


class JsonFields:
    """One JSON object, read field by field; call `close` last, it tells the keys that nobody asked for."""

    def __init__(self, value: object, path: str, faults: list[FieldFault]) -> None:
        self.path, self.faults = path, faults
        self._known: set[str] = set()
        self._values: dict[object, object] = value if isinstance(value, dict) else {}
        if not isinstance(value, dict):
            self.fault("", "must be an object")

    def at(self, name: str) -> str:
        """The full path of a field."""
        return f"{self.path}.{name}" if self.path and name else self.path or name

    def fault(self, name: str, reason: str) -> None:
        self.faults.append(FieldFault(self.at(name), reason))

    def close(self) -> None:
        for name in self._values:
            if name not in self._known:
                self.fault(_as_path(name), "unknown field")

    def has(self, name: str) -> bool:
        """Whether the field is there and says something."""
        self._known.add(name)
        return self._values.get(name) is not None

    def value(self, name: str) -> object:
        self._known.add(name)
        return self._values.get(name)

    def text(self, name: str, longest: int, *, is_needed: bool = False) -> str:
        """A text of at most `longest` characters, line breaks included; "" where it is missing."""
        value = self.value(name)
        if value is None or value == "":
            if is_needed:
                self.fault(name, "is needed")
            return ""
        if not isinstance(value, str):
            return self._refuse(name, "must be text", "")
        if len(value) > longest:
            return self._refuse(name, f"is longer than {longest} characters", "")
        if _NO_TEXT.search(value):
            return self._refuse(name, "holds a sign that is no text", "")
        if is_needed and not value.strip():
            self.fault(name, "is needed")
        return value

    def whole(self, name: str, lowest: int, highest: int) -> int | None:
        """A whole number between the two, both included; None where it is missing."""
        value = self.value(name)
        if value is None:
            return None
        if isinstance(value, float) and value.is_integer():
            value = int(
                value
            )  # because: in JSON 7.0 is the whole number 7 (JSON Schema 2020-12, core, 4.2.3)
        if isinstance(value, bool) or not isinstance(value, int):
            return self._refuse(name, "must be a whole number", None)
        if not lowest <= value <= highest:
            return self._refuse(name, f"must be from {lowest} to {highest}", None)
        return value

    def flag(self, name: str) -> bool:
        """True or false; false where it is missing."""
        value = self.value(name)
        if value is None or isinstance(value, bool):
            return bool(value)
        return self._refuse(name, "must be true or false", False)

    def code(self, name: str, kind: type[E]) -> E | None:
        """One of the codes of `kind`; None where it is missing or ""."""
        value = self.value(name)
        if value is None or value == "":
            return None
        if isinstance(value, str) and value in {member.value for member in kind}:
            return kind(value)
        return self._refuse(name, f"must be one of {', '.join(member.value for member in kind)}", None)

    def needed_code(self, name: str, kind: type[E], otherwise: E) -> E:
        """One of the codes of `kind`; `otherwise`, with the fault noted, where there is none."""
        before = len(self.faults)
        found = self.code(name, kind)
        if found is None and len(self.faults) == before:
            self.fault(name, "is needed")
        return found or otherwise

    def uid(self, name: str) -> UUID | None:
        """A UUID in its usual form of 36 signs; None where it is missing."""
        value = self.value(name)
        if value is None:
            return None
        try:
            if isinstance(value, str) and len(value) == 36:
                return UUID(value)
        except ValueError:
            pass
        return self._refuse(name, "must be a UUID", None)

    def needed_uid(self, name: str) -> UUID:
        before = len(self.faults)
        found = self.uid(name)
        if found is None and len(self.faults) == before:
            self.fault(name, "is needed")
        return found or UUID(int=0)

    def instant(self, name: str) -> datetime | None:
        """A moment with its offset from UTC, as UTC; None where it is missing."""
        value = self.value(name)
        if value is None:
            return None
        try:
            moment = datetime.fromisoformat(value) if isinstance(value, str) else None
        except ValueError:
            moment = None
        if moment is None or moment.tzinfo is None:
            return self._refuse(name, "must be a moment with its offset, such as 2026-03-02T09:30:00Z", None)
        if not FIRST_YEAR <= moment.year <= LAST_YEAR:
            return self._refuse(name, f"must lie between {FIRST_YEAR} and {LAST_YEAR}", None)
        return moment.astimezone(UTC)

    def needed_instant(self, name: str) -> datetime:
        before = len(self.faults)
        found = self.instant(name)
        if found is None and len(self.faults) == before:
            self.fault(name, "is needed")
        return found or datetime(FIRST_YEAR, 1, 1, tzinfo=UTC)

    def number(self, name: str, lowest: Decimal, highest: Decimal, places: int) -> Decimal | None:
        """A number written as text with a point ("2.50"); None where it is missing or ""."""
        value = self.value(name)
        if value is None or value == "":
            return None
        try:
            found = Decimal(value) if isinstance(value, str) and len(value) <= 20 else None
        except InvalidOperation:
            found = None
        if found is None or not found.is_finite():
            return self._refuse(name, 'must be a number as text, such as "2.50"', None)
        if not lowest <= found <= highest:
            return self._refuse(name, f"must be from {lowest} to {highest}", None)
        if found != round(found, places):
            return self._refuse(name, f"has more than {places} decimals", None)
        return found

    def items(self, name: str, most: int) -> list[tuple[str, object]]:
        """The items of a list, each with its path; empty where it is missing."""
        value = self.value(name)
        if value is None:
            return []
        if not isinstance(value, list):
            return self._refuse(name, "must be a list", [])
        if len(value) > most:
            return self._refuse(name, f"has more than {most} items", [])
        return [(f"{self.at(name)}[{place}]", item) for place, item in enumerate(value)]

    def inner(self, name: str) -> "JsonFields":
        """The object in a field; an empty one where it is missing."""
        value = self.value(name)
        return JsonFields({} if value is None else value, self.at(name), self.faults)

    def _refuse(self, name: str, reason: str, empty: T) -> T:
        self.fault(name, reason)
        return empty


def _as_path(name: object) -> str:
    """A key as it may stand in an answer: cut short, without signs that are no text."""
    return _NO_TEXT.sub("?", str(name))[:60]

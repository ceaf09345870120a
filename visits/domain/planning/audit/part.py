"""Reading one object of a document key by key, every fault noted with its JSON path."""

from dataclasses import dataclass, field
from typing import TypeVar

from visits.domain.planning.audit.values import Kind, Misread

T = TypeVar("T")
A = TypeVar("A")


@dataclass
class Faults:
    """What is wrong with a document: `broken` holds what stops the audit, `surplus` the keys nobody knows."""

    broken: list[str] = field(default_factory=list)
    surplus: list[str] = field(default_factory=list)


class Part:
    """One object of a document. `keys` is every key it may have, parted by spaces."""

    def __init__(self, value: object, path: str, keys: str, faults: Faults) -> None:
        self.path, self.faults = path, faults
        self.readable = isinstance(value, dict)
        self.values: dict[object, object] = value if isinstance(value, dict) else {}
        if not self.readable:
            faults.broken.append(f"{path or '$'}: is not an object")
        known = set(keys.split())
        surplus = [key for key in self.values if key not in known]
        faults.surplus.extend(f"{self.at(key)}: is not a key of this document" for key in surplus)

    def at(self, key: object) -> str:
        return f"{self.path}.{key}" if self.path else str(key)

    def wrong(self, key: str, sentence: str) -> None:
        self.faults.broken.append(f"{self.at(key)}: {sentence}")

    def has(self, key: str) -> bool:
        """Whether the key is given and not null."""
        return self.values.get(key) is not None

    def need(self, key: str, kind: Kind[T]) -> T:
        if key not in self.values:
            if self.readable:
                self.wrong(key, "is missing")
            return kind.instead
        try:
            return kind.read(self.values[key])
        except Misread as wrong:
            self.wrong(key, str(wrong))
            return kind.instead

    def may(self, key: str, kind: Kind[T], absent: A) -> T | A:
        return self.need(key, kind) if self.has(key) else absent

    def part(self, key: str, keys: str) -> "Part":
        if key not in self.values and self.readable:
            self.wrong(key, "is missing")
            return Part({}, self.at(key), keys, Faults())
        return Part(self.values.get(key), self.at(key), keys, self.faults)

    def parts(self, key: str, keys: str) -> list["Part"]:
        return [Part(item, path, keys, self.faults) for path, item in self.items(key)]

    def items(self, key: str) -> list[tuple[str, object]]:
        """The entries of a list, each with its path."""
        if key not in self.values:
            if self.readable:
                self.wrong(key, "is missing")
            return []
        return self._entries(self.at(key), self.values[key])

    def line(self, key: str, kind: Kind[T]) -> list[T]:
        """A list of plain values of one kind."""
        return [self._value(path, item, kind) for path, item in self.items(key)]

    def rows(self, key: str, kind: Kind[T]) -> list[list[T]]:
        """A list of lists of plain values of one kind."""
        return [
            [self._value(place, item, kind) for place, item in self._entries(path, row)]
            for path, row in self.items(key)
        ]

    def _entries(self, path: str, found: object) -> list[tuple[str, object]]:
        if isinstance(found, list):
            return [(f"{path}[{place}]", item) for place, item in enumerate(found)]
        self.faults.broken.append(f"{path}: is not a list")
        return []

    def _value(self, path: str, item: object, kind: Kind[T]) -> T:
        try:
            return kind.read(item)
        except Misread as wrong:
            self.faults.broken.append(f"{path}: {wrong}")
            return kind.instead

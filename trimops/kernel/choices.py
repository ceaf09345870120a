"""From a domain enum with labels to the pairs that a form or a column offers."""

from collections.abc import Iterable
from typing import Protocol


class Labelled(Protocol):
    @property
    def value(self) -> object: ...

    @property
    def label(self) -> str: ...


def choices_of(kind: Iterable[Labelled]) -> list[tuple[object, str]]:
    """(value, label) for each member of a labelled enum, in its own order."""
    return [(member.value, member.label) for member in kind]

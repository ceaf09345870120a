"""From a domain enum with labels to the pairs that a form or a column offers."""

from enum import Enum
from typing import Protocol, TypeVar


class Labelled(Protocol):
    @property
    def label(self) -> str: ...


L = TypeVar("L", bound=Labelled)


def choices_of(kind: type[L]) -> list[tuple[object, str]]:
    """(value, label) for each member of a labelled enum, in its own order."""
    if not issubclass(kind, Enum):
        raise TypeError(f"{kind.__name__} is not an enum.")
    return [(member.value, member.label) for member in kind]

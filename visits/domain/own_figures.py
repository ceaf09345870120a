"""A business's own figures laid over the defaults of a dataclass of numbers."""

import math
from collections.abc import Mapping
from dataclasses import fields, replace
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from _typeshed import DataclassInstance

F = TypeVar("F", bound="DataclassInstance")


class FigureRefused(ValueError):
    """A figure is unknown or makes no sense; the message names it and says what to mend."""


def with_own_figures(usual: F, own: Mapping[str, object]) -> F:
    """`usual` with the numbers of `own` in place of its own. FigureRefused for unknown names, text, negatives."""
    names = {item.name for item in fields(usual)}
    for name, value in own.items():
        if name not in names:
            raise FigureRefused(f"{name}: is no figure known here; known are {', '.join(sorted(names))}")
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise FigureRefused(f"{name}: must be a number")
        if not math.isfinite(value):
            raise FigureRefused(f"{name}: must be a number")
        if value < 0:
            raise FigureRefused(f"{name}: must not be below 0")
    return replace(usual, **dict(own))

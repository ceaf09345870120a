"""The ground of a picture whose figures lie in rows: words on the left, a scale from 0, words on the right."""

from collections.abc import Sequence
from dataclasses import dataclass

from trimops.paper.colours import Tint
from trimops.paper.drawing import Line, Pen, Shape, Text
from trimops.paper.fitting import wrapped
from visits.documents.herd.axis import Scale, tick_words
from visits.documents.herd.marks import WORDS, centred

LINE = 4.8


@dataclass(frozen=True)
class Field:
    """Where the figures of the rows lie, and how high the rows reach."""

    scale: Scale
    top: float
    foot: float


def unit_words(unit: str, width: float) -> tuple[list[Shape], float]:
    """The words of the unit over the picture, and where they end."""
    lines = wrapped(unit, width, WORDS, lines=2)
    shapes: list[Shape] = [
        Text((0, WORDS * 0.85 + i * LINE), line, WORDS, tint=Tint.QUIET) for i, line in enumerate(lines)
    ]
    return shapes, len(lines) * LINE + 1.2


def upright_lines(field: Field, at_ticks: Sequence[float]) -> list[Shape]:
    """An upright line at every tick, its figure below."""
    shapes: list[Shape] = []
    for tick in at_ticks:
        x = field.scale.at(tick)
        pen = Pen(Tint.INK, 0.35) if tick == 0 else Pen(Tint.RULE, 0.2)
        shapes.append(Line(((x, field.top), (x, field.foot)), pen))
        shapes.append(centred((x, field.foot + 4.6), tick_words(tick)))
    return shapes

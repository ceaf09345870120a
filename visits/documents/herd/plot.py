"""The ground of a picture whose figures stand upright: the unit above, level lines with their figures on the left."""

from collections.abc import Sequence
from dataclasses import dataclass

from trimops.paper.colours import Tint
from trimops.paper.drawing import Line, Pen, Shape, Text
from trimops.paper.fitting import wrapped
from trimops.paper.typefaces import BODY, width_of
from visits.documents.herd.axis import Scale, tick_words
from visits.documents.herd.marks import WORDS

_LINE = 4.8


@dataclass(frozen=True)
class Plot:
    """Where the figures go: from `left` to `right`, from `top` (the scale's end) to `foot` (its start, 0)."""

    left: float
    right: float
    top: float
    foot: float
    scale: Scale
    shapes: tuple[Shape, ...]


def plot(unit: str, at_ticks: Sequence[float], width: float, height: float, head: float = 0.0) -> Plot:
    """A plot `height` mm high below the words of its unit, with `head` mm kept free between."""
    lines = wrapped(unit, width, WORDS, lines=2)
    top = len(lines) * _LINE + 2.6 + head
    foot = top + height
    numbers = [tick_words(tick) for tick in at_ticks]
    left = max(width_of(words, BODY, WORDS) for words in numbers) + 2
    right = width - 1
    scale = Scale(0, at_ticks[-1], foot, top)
    shapes: list[Shape] = [
        Text((0, WORDS * 0.85 + i * _LINE), line, WORDS, tint=Tint.QUIET) for i, line in enumerate(lines)
    ]
    for tick, words in zip(at_ticks, numbers, strict=True):
        y = scale.at(tick)
        pen = Pen(Tint.INK, 0.35) if tick == 0 else Pen(Tint.RULE, 0.2)
        shapes.append(Line(((left, y), (right, y)), pen))
        shapes.append(Text((left - 1.2, y + WORDS * 0.35), words, WORDS, tint=Tint.QUIET, anchor="end"))
    return Plot(left, right, top, foot, scale, tuple(shapes))

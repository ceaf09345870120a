"""New cases of the two great kinds by year, infectious against claw horn, each with its interval."""

from functools import partial

from trimops.paper.colours import Tint
from trimops.paper.drawing import Anchor, Drawing, Line, Pen, Point, Shape, Text
from trimops.paper.fitting import fitting
from trimops.paper.typefaces import BODY, width_of
from visits.documents.herd.axis import figure, interval_words, ticks, top_of
from visits.documents.herd.key import KeyItem, key
from visits.documents.herd.marks import WORDS, Kind, centred_within, mark, standing
from visits.documents.herd.plot import Plot, plot
from visits.documents.herd_story_content import Kinds, KindYear, Reading

_HEIGHT = 38.0
_SERIES: tuple[tuple[Kind, str, int], ...] = (("dot", "infectious", -1), ("square", "claw horn", 1))
_APART = 2.2
_NUMBER_ROOM = 8.0


def kinds(content: Kinds, width: float) -> Drawing:
    """The picture. ValueError when no year has a figure."""
    if content.is_empty:
        raise ValueError("no year to draw")
    readings = [reading for year in content.years for reading in _pair(year) if reading]
    ground = plot(content.unit, ticks(top_of(readings)), width, _HEIGHT)
    shapes = [*ground.shapes, *_labels(content, ground)]
    for order, series in enumerate(_SERIES):
        shapes += _series(content, ground, order, series)
    items = [
        KeyItem(partial(_sign, kind), words)
        for order, (kind, words, _) in enumerate(_SERIES)
        if _has(content, order)
    ]
    below, end = key(items, ground.foot + 7.2, width)
    return Drawing(width, end, (*shapes, *below), f"Kinds of lesions: {content.unit}", _told(content))


def _sign(kind: Kind, at: Point) -> list[Shape]:
    return [mark(kind, at)]


def _pair(year: KindYear) -> tuple[Reading | None, Reading | None]:
    return year.infectious, year.claw_horn


def _has(content: Kinds, order: int) -> bool:
    return any(_pair(year)[order] for year in content.years)


def _slot(content: Kinds, ground: Plot) -> float:
    return (ground.right - ground.left) / len(content.years)


def _middle(content: Kinds, ground: Plot, order: int) -> float:
    return ground.left + _slot(content, ground) * (order + 0.5)


def _labels(content: Kinds, ground: Plot) -> list[Shape]:
    """Every year, or every second or third where they would not fit."""
    room = _slot(content, ground)
    widest = max(width_of(year.label, BODY, WORDS) for year in content.years) + 1.5
    every = 1 if len(content.years) <= 3 else max(1, -int(-min(widest, 20.0) // room))
    return [
        centred_within(
            (_middle(content, ground, order), ground.foot + 5.2),
            fitting(year.label, room * every - 1, WORDS),
            ground.right + 1,
        )
        for order, year in enumerate(content.years)
        if (len(content.years) - 1 - order) % every == 0
    ]


def _series(content: Kinds, ground: Plot, order: int, series: tuple[Kind, str, int]) -> list[Shape]:
    """One kind over the years: with its numbers where there is room for them, else joined by a line."""
    kind, _, side = series
    apart = min(_APART, _slot(content, ground) / 4)
    is_written = _slot(content, ground) >= 2 * (apart + _NUMBER_ROOM)
    shapes: list[Shape] = []
    run = []
    for at, year in enumerate(content.years):
        reading = _pair(year)[order]
        if reading is None:
            continue
        x = _middle(content, ground, at) + side * apart
        y = ground.scale.at(reading.value)
        run.append((x, y))
        shapes += standing(kind, x, ground.scale, reading)
        if is_written:
            base = min(y + WORDS * 0.35, ground.foot - 0.8)
            end: Anchor = "end" if side < 0 else "start"
            shapes.append(Text((x + side * 1.9, base), figure(reading.value), WORDS, bold=True, anchor=end))
    if is_written or len(run) < 2:
        return shapes
    return [Line(tuple(run), Pen(Tint.QUIET, 0.25, () if order == 0 else (1.2, 0.9))), *shapes]


def _told(content: Kinds) -> str:
    parts = []
    for year in content.years:
        figures = [
            f"{words} {interval_words(reading) if reading else 'not known'}"
            for (_, words, _), reading in zip(_SERIES, _pair(year), strict=True)
        ]
        parts.append(f"{year.label}: {', '.join(figures)}")
    return "; ".join(parts)

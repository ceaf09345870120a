"""The day's ribbon with time running down: for a phone's width."""

from dataclasses import dataclass

from trimops.paper.colours import Meaning, Tint, tint_of
from trimops.paper.days import clock
from trimops.paper.drawing import Drawing, Line, Pen, Shape, Text
from trimops.paper.fitting import wrapped
from trimops.paper.signs import sign
from visits.documents.day_ribbon_content import DayRibbon, RibbonVisit, TimeScale
from visits.documents.ribbon_band import band_shapes
from visits.documents.ribbon_words import drive_words, span_length, told, visit_times, visit_work

_TOP = 4.0
_NEAR, _FAR = 14.5, 23.5
_WORDS = 31.0
_SIZE, _NAME = 3.7, 4.2
_STEP = 5.0


@dataclass(frozen=True)
class _Label:
    """Words that want to stand beside `wanted` (mm down the page). Of a visit, all but two lines are its name."""

    wanted: float
    lines: tuple[str, ...]
    meaning: Meaning | None = None

    @property
    def height(self) -> float:
        return _STEP * len(self.lines) + (1.6 if self.meaning else 0.4)


def ribbon_down(day: DayRibbon, width: float = 87.0, hour: float = 17.0) -> Drawing:
    """The day `width` mm wide, `hour` mm to the hour. Words that would overlap are moved down, with a leader."""
    hours = (day.ends - day.begins).total_seconds() / 3600
    scale = TimeScale(day.begins, day.ends, _TOP, _TOP + hours * hour)
    shapes = band_shapes(day, scale, lambda along, across: (across, along), (_NEAR, _FAR))
    for at, along in scale.hours():
        shapes.append(Text((12.3, along + 1.3), clock(at), _SIZE, tint=Tint.QUIET, anchor="end"))
    y = 0.0
    for label in sorted(_labels(day, scale, width), key=lambda item: item.wanted):
        y = max(y, label.wanted)
        shapes += _label_shapes(label, y)
        y += label.height
    height = max(scale.last + 3, y + 1)
    if any(True for _ in day.milkings()):
        shapes.append(Text((_FAR + 1.2, height + 2.5), "hatched: milking", _SIZE, tint=Tint.QUIET))
        height += 4
    return Drawing(width, height, tuple(shapes), day.title, told(day))


def _labels(day: DayRibbon, scale: TimeScale, width: float) -> list[_Label]:
    labels = [_Label(scale.at(v.start), _visit_lines(v, width), v.meaning) for v in day.visits]
    between = [((d.leave, d.arrive), drive_words(d)) for d in day.drives]
    between += [(idle, f"free {span_length(idle)}") for idle in day.idle()]
    if day.meal:
        between.append((day.meal, f"meal {span_length(day.meal)}"))
    for (start, end), words in between:
        middle = (scale.at(start) + scale.at(end)) / 2
        labels.append(_Label(middle - _STEP / 2, (words,)))
    return labels


def _visit_lines(visit: RibbonVisit, width: float) -> tuple[str, ...]:
    name = wrapped(visit.name, width - _WORDS - 5.5, _NAME, lines=2, bold=True)
    return *name, visit_times(visit), " · ".join(visit_work(visit))


def _label_shapes(label: _Label, y: float) -> list[Shape]:
    if label.meaning is None:
        return [Text((_WORDS, y + 4.1), label.lines[0], _SIZE, tint=Tint.QUIET)]
    shapes: list[Shape] = []
    if y - label.wanted > 1.5:
        ends = ((_FAR + 0.6, label.wanted + 2), (_WORDS - 0.8, y + _STEP / 2))
        shapes.append(Line(ends, Pen(tint_of(label.meaning), 0.25)))
    shapes += sign(label.meaning, (_WORDS + 1.6, y + 2.6), 3.2)
    for row, line in enumerate(label.lines):
        is_name = row < len(label.lines) - 2
        at = (_WORDS + 5, y + 4.1 + row * _STEP)
        shapes.append(Text(at, line, _NAME if is_name else _SIZE, bold=is_name))
    return shapes

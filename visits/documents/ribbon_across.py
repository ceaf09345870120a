"""The day's ribbon with time running across: for the desk and for print."""

from itertools import takewhile

from trimops.paper.colours import Tint, tint_of
from trimops.paper.days import clock
from trimops.paper.drawing import Drawing, Line, Pen, Polygon, Shape, Text, box
from trimops.paper.fitting import fits, fitting
from trimops.paper.signs import sign
from trimops.paper.typefaces import BODY, width_of
from visits.documents.day_ribbon_content import DayRibbon, RibbonVisit, Span, TimeScale
from visits.documents.ribbon_band import band_shapes
from visits.documents.ribbon_words import span_length, told, visit_times, visit_work

_NEAR, _FAR = 8.0, 26.0
_MILKING_FAR = _FAR + 4.2
_SIZE, _NAME = 3.0, 3.5
_STEP = 4.1


def ribbon_across(day: DayRibbon, width: float = 250.0) -> Drawing:
    """The day `width` mm wide; words of visits too short to hold them stand below with a leader line."""
    scale = TimeScale(day.begins, day.ends, 6, width - 6)
    shapes = band_shapes(day, scale, lambda along, across: (along, across), (_NEAR, _FAR))
    shapes += _hours(scale)
    shapes += _between(day, scale)
    inside = [visit for visit in day.visits if _holds_words(visit, scale)]
    for visit in inside:
        shapes += _words_inside(visit, scale)
    below, depth = _words_below([visit for visit in day.visits if visit not in inside], scale, width)
    shapes += below
    height = max(_MILKING_FAR + 5, depth + 1.5)
    return Drawing(width, height, tuple(shapes), day.title, told(day))


def _hours(scale: TimeScale) -> list[Shape]:
    return [
        Text((along, 4), clock(at), _SIZE, tint=Tint.QUIET, anchor="middle") for at, along in scale.hours()
    ]


def _between(day: DayRibbon, scale: TimeScale) -> list[Shape]:
    """Lengths of drives over their lines, the meal and free time in their gaps, the word for the hatching."""
    middle = (_NEAR + _FAR) / 2
    spans: list[tuple[Span, tuple[str, ...], float]] = [
        ((drive.leave, drive.arrive), (span_length((drive.leave, drive.arrive)),), middle - 1.2)
        for drive in day.drives
    ]
    spans += [(idle, ("free", span_length(idle)), middle) for idle in day.idle()]
    if day.meal:
        spans.append((day.meal, ("meal", span_length(day.meal)), middle))
    shapes: list[Shape] = []
    for (start, end), lines, bottom in spans:
        room = scale.at(end) - scale.at(start) - 0.8
        centre = (scale.at(start) + scale.at(end)) / 2
        for row, line in enumerate(_while_fitting(lines, room)):
            at = (centre, bottom + row * _STEP)
            shapes.append(Text(at, line, _SIZE, tint=Tint.QUIET, anchor="middle"))
    return shapes + _milking_words(day, scale)


def _while_fitting(lines: tuple[str, ...], room: float) -> list[str]:
    return list(takewhile(lambda line: fits(line, room, _SIZE), lines))


def _milking_words(day: DayRibbon, scale: TimeScale) -> list[Shape]:
    shapes: list[Shape] = []
    taken = -1.0
    for start, end in sorted(day.milkings()):
        if scale.at(start) > taken and fits("milking", scale.at(end) - scale.at(start) + 6, _SIZE):
            shapes.append(Text((scale.at(start), _MILKING_FAR + 3.4), "milking", _SIZE, tint=Tint.QUIET))
            taken = scale.at(start) + 14
    return shapes


def _holds_words(visit: RibbonVisit, scale: TimeScale) -> bool:
    room = scale.at(visit.finish) - scale.at(visit.start) - 2.5
    return all(fits(line, room, _SIZE) for line in (visit_times(visit), *visit_work(visit)))


def _words_inside(visit: RibbonVisit, scale: TimeScale) -> list[Shape]:
    left, right = scale.at(visit.start) + 1.5, scale.at(visit.finish) - 1.5
    name = fitting(visit.name, right - left - 4.4, _NAME, bold=True)
    shapes: list[Shape] = [
        *sign(visit.meaning, (left + 1.4, _NEAR + 3.1), 2.6),
        Text((left + 4.4, _NEAR + 4.3), name, _NAME, bold=True),
    ]
    for row, line in enumerate((visit_times(visit), *visit_work(visit))):
        shapes.append(Text((left, _NEAR + 8.5 + row * _STEP), line, _SIZE))
    return shapes


def _words_below(visits: list[RibbonVisit], scale: TimeScale, width: float) -> tuple[list[Shape], float]:
    """Words of short visits under the band and how far down they reach.

    From the last visit to the first, each on the highest row that is still free to its right, so that a leader
    seldom meets another's words; where it does, it passes behind them.
    """
    leaders: list[Shape] = []
    lines: list[Shape] = []
    row_starts: list[float] = []
    for visit in sorted(visits, key=lambda v: v.start, reverse=True):
        centre = (scale.at(visit.start) + scale.at(visit.finish)) / 2
        words = fitting(
            f"{visit.name}, {visit_times(visit)}, {', '.join(visit_work(visit))}", width - 10, _SIZE
        )
        room = width_of(words, BODY, _SIZE)
        left = min(centre - 0.5, width - 1 - room)
        row = next((i for i, start in enumerate(row_starts) if left + room + 3 < start), len(row_starts))
        row_starts[row : row + 1] = [left]
        y = _MILKING_FAR + 8.5 + row * 5
        leaders += sign(visit.meaning, (centre, (_NEAR + _FAR) / 2), 2.6)
        leaders.append(Line(((centre, _FAR + 0.3), (centre, y - 3.2)), Pen(tint_of(visit.meaning), 0.25)))
        lines.append(Polygon(box(left - 0.8, y - 3, left + room + 0.8, y + 1), Tint.PAPER, None))
        lines.append(Text((left, y), words, _SIZE))
    return leaders + lines, _MILKING_FAR + 4.5 + len(row_starts) * 5 if visits else 0.0

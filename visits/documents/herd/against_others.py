"""This herd's interval beside figures in print and the range of the business's other herds: no names, no rank."""

from trimops.paper.colours import Tint
from trimops.paper.drawing import Drawing, Line, Pen, Polygon, Shape, Text, box
from trimops.paper.fitting import fitting, wrapped
from trimops.paper.typefaces import BODY, width_of
from visits.documents.herd.axis import Scale, figure, interval_words, tick_words, ticks, top_of
from visits.documents.herd.key import KeyItem, key
from visits.documents.herd.marks import WORDS, centred, lying, mark
from visits.documents.herd.rows import LINE, unit_words
from visits.documents.herd_story_content import AgainstOthers, Contest, Party, Reading, SetAgainst

_HEAD = 6.6
_BAND = 5.4
_RANGE = 2.4
_KEY_WORDS = {
    Party.OWN: "this herd",
    Party.OTHERS: "other herds, as a range",
    Party.PUBLISHED: "published",
}


def against_others(content: AgainstOthers, width: float) -> Drawing:
    """The picture. ValueError when there is no figure."""
    if content.is_empty:
        raise ValueError("nothing to set against")
    readings = [line.reading for contest in content.contests for line in contest.lines if line.reading]
    at_ticks = ticks(top_of(readings))
    scale = Scale(0, at_ticks[-1], 1.6, width - 4)
    shapes, y = unit_words(content.unit, width)
    for contest in content.contests:
        shapes.append(
            Text((0, y + _HEAD - 2), fitting(contest.what, width, WORDS, bold=True), WORDS, bold=True)
        )
        y += _HEAD
        for line in contest.lines:
            row, y = _line(line, y, scale, at_ticks, width)
            shapes += row
    shapes += [centred((scale.at(tick), y + 3.4), tick_words(tick)) for tick in at_ticks]
    below, end = key(_key_items(content), y + 5, width)
    return Drawing(width, end, (*shapes, *below), f"Against others: {content.unit}", _told(content))


def _line(
    line: SetAgainst, top: float, scale: Scale, at_ticks: tuple[float, ...], width: float
) -> tuple[list[Shape], float]:
    """Words and figure over the mark; returns also where the line ends."""
    value = _value_words(line)
    room = width - width_of(value, BODY, WORDS) - 3
    is_own = line.party is Party.OWN
    y = top
    shapes: list[Shape] = [Text((width, y + 3.6), value, WORDS, bold=is_own, anchor="end")]
    for words in wrapped(line.label, room, WORDS, lines=2, bold=is_own):
        shapes.append(Text((0, y + 3.6), words, WORDS, bold=is_own))
        y += LINE
    if line.reading is None:
        return shapes, y + 1
    middle = y + _BAND / 2
    for tick in at_ticks:
        x = scale.at(tick)
        pen = Pen(Tint.INK, 0.35) if tick == 0 else Pen(Tint.RULE, 0.25)
        shapes.append(Line(((x, y + 0.5), (x, y + _BAND - 0.5)), pen))
    return [*shapes, *_marked(line.party, line.reading, middle, scale)], y + _BAND + 0.8


def _marked(party: Party, reading: Reading, y: float, scale: Scale) -> list[Shape]:
    if party is Party.OTHERS:
        return _range(reading, y, scale)
    return lying("dot" if party is Party.OWN else "diamond", y, scale, reading, 1.4)


def _range(reading: Reading, y: float, scale: Scale) -> list[Shape]:
    """A bar from the lowest to the highest herd with a stroke at the middle."""
    if reading.low is None or reading.high is None:
        return [mark("square", (scale.at(reading.value), y))]
    corners = box(scale.at(reading.low), y - _RANGE / 2, scale.at(reading.high), y + _RANGE / 2)
    x = scale.at(reading.value)
    stroke = Line(((x, y - _RANGE / 2), (x, y + _RANGE / 2)), Pen(Tint.INK, 0.6))
    return [Polygon(corners, Tint.GROUND, Pen(Tint.INK, 0.3)), stroke]


def _value_words(line: SetAgainst) -> str:
    if line.reading is None:
        return "too few to tell"
    if line.party is Party.OTHERS and line.reading.low is not None and line.reading.high is not None:
        return f"{figure(line.reading.low)} to {figure(line.reading.high)}"
    return interval_words(line.reading)


def _key_items(content: AgainstOthers) -> list[KeyItem]:
    drawn = {line.party for contest in content.contests for line in contest.lines if line.reading}
    signs = {
        Party.OWN: lambda at: [mark("dot", at)],
        Party.OTHERS: lambda at: _swatch(at),
        Party.PUBLISHED: lambda at: [mark("diamond", at)],
    }
    return [KeyItem(signs[party], _KEY_WORDS[party]) for party in Party if party in drawn]


def _swatch(at: tuple[float, float]) -> list[Shape]:
    x, y = at
    return [Polygon(box(x - 1.7, y - 1.1, x + 1.7, y + 1.1), Tint.GROUND, Pen(Tint.INK, 0.3))]


def _told(content: AgainstOthers) -> str:
    return "; ".join(_contest_words(contest) for contest in content.contests)


def _contest_words(contest: Contest) -> str:
    return f"{contest.what}: " + ", ".join(f"{line.label} {_value_words(line)}" for line in contest.lines)

"""Which cows: every group of cows in a row with its figure, its interval and the numbers it rests on.

A dashed line stands at the figure of all cows, to read the groups against.
"""

from trimops.paper.colours import Tint
from trimops.paper.drawing import Drawing, Line, Pen, Shape, Text
from trimops.paper.fitting import wrapped
from trimops.paper.typefaces import BODY, width_of
from visits.documents.herd.axis import Scale, figure, interval_words, ticks, top_of
from visits.documents.herd.key import KeyItem, key
from visits.documents.herd.marks import WORDS, lying
from visits.documents.herd.rows import LINE, Field, unit_words, upright_lines
from visits.documents.herd_story_content import CowGroup, Reading, WhichCows

_ROW = 5.6
_SPLIT_HEAD = 6.4
_WIDEST_LABEL = 34.0
_TICK_ROOM = 11.0
_EVERYONE = Pen(Tint.INK, 0.3, (1.2, 0.9))


def which_cows(content: WhichCows, width: float) -> Drawing:
    """The picture. ValueError when no group was seen."""
    if content.is_empty:
        raise ValueError("no group to draw")
    shapes, top = unit_words(content.unit, width)
    left, right = _room(content, width)
    at_ticks = ticks(top_of(_readings(content)), max(1, min(4, int((right - left) / _TICK_ROOM))))
    rows = sum(_deep(group) for group in _groups(content))
    height = _SPLIT_HEAD * len(content.splits) + rows
    field = Field(Scale(0, at_ticks[-1], left, right), top, top + height)
    shapes += upright_lines(field, at_ticks)
    if content.everyone:
        x = field.scale.at(content.everyone.value)
        shapes.append(Line(((x, field.top), (x, field.foot)), _EVERYONE))
    y = top
    for split in content.splits:
        shapes.append(Text((0, y + _SPLIT_HEAD - 1.9), split.label, WORDS, bold=True))
        y += _SPLIT_HEAD
        for group in split.groups:
            shapes += _row(group, y, field, width)
            y += _deep(group)
    below, end = _below(content, field.foot + 5.6, width)
    return Drawing(width, end, (*shapes, *below), f"Which cows: {content.unit}", _told(content))


def _groups(content: WhichCows) -> list[CowGroup]:
    return [group for split in content.splits for group in split.groups]


def _readings(content: WhichCows) -> list[Reading]:
    everyone = [content.everyone] if content.everyone else []
    return everyone + [group.reading for group in _groups(content) if group.reading]


def _room(content: WhichCows, width: float) -> tuple[float, float]:
    """From where to where the figures lie, between the labels and the counts."""
    labels = max(width_of(line, BODY, WORDS) for group in _groups(content) for line in _label(group))
    counts = max(width_of(_counts(group), BODY, WORDS) for group in _groups(content))
    return labels + 3, width - counts - 4


def _counts(group: CowGroup) -> str:
    return f"{group.count:,} of {group.seen:,}" if group.reading else "none seen"


def _label(group: CowGroup) -> tuple[str, ...]:
    return wrapped(group.label, _WIDEST_LABEL, WORDS, lines=2)


def _deep(group: CowGroup) -> float:
    """How deep its row is: a long label takes a second line."""
    return _ROW + LINE * (len(_label(group)) - 1)


def _row(group: CowGroup, top: float, field: Field, width: float) -> list[Shape]:
    y = top + _ROW / 2
    base = y + WORDS * 0.35
    shapes: list[Shape] = [Text((0, base + i * LINE), line, WORDS) for i, line in enumerate(_label(group))]
    shapes.append(Text((width, base), _counts(group), WORDS, tint=Tint.QUIET, anchor="end"))
    return shapes + lying("dot", y, field.scale, group.reading) if group.reading else shapes


def _below(content: WhichCows, top: float, width: float) -> tuple[list[Shape], float]:
    if not content.everyone:
        return [], top
    words = f"all cows: {figure(content.everyone.value)}"
    return key(
        [KeyItem(lambda at: [Line(((at[0], at[1] - 2), (at[0], at[1] + 2)), _EVERYONE)], words)], top, width
    )


def _told(content: WhichCows) -> str:
    parts = [f"all cows: {interval_words(content.everyone)}"] if content.everyone else []
    for split in content.splits:
        for group in split.groups:
            reading = f"{interval_words(group.reading)}, " if group.reading else ""
            parts.append(f"{split.label} {group.label}: {reading}{_counts(group)}")
    return "; ".join(parts)

"""How long treated feet stay free of the next treatment: a line of steps with its interval as a band.

Under it stands how many feet were still followed: where few are left, the line says little.
"""

from collections.abc import Callable

from trimops.paper.colours import Tint
from trimops.paper.drawing import Drawing, Line, Pen, Point, Polygon, Shape, Text
from trimops.paper.typefaces import BODY, width_of
from visits.documents.herd.axis import Scale, interval_words, tick_words, ticks
from visits.documents.herd.marks import WORDS, centred
from visits.documents.herd.plot import Plot, plot
from visits.documents.herd.stairs import stairs
from visits.documents.herd_story_content import FreeStep, TimeToNext

_HEIGHT = 40.0
_UNIT = "of 100 treated feet, not treated again"
_HALF = Pen(Tint.INK, 0.3, (1.2, 0.9))


def time_to_next(content: TimeToNext, width: float) -> Drawing:
    """The picture. ValueError without a step."""
    if content.is_empty:
        raise ValueError("no foot to draw")
    ground = plot(_UNIT, (0, 25, 50, 75, 100), width, _HEIGHT)
    days = Scale(0, content.last_day, ground.left, ground.right - 3)
    shapes: list[Shape] = [*_band(content, ground, days), *ground.shapes]
    points = [(days.at(step.day), ground.scale.at(step.share.value)) for step in content.steps]
    shapes.append(Line(stairs(points, days.at(content.last_day)), Pen(Tint.INK, 0.6)))
    shapes += _half(content, ground, days)
    below, end = _below(content, ground, days)
    return Drawing(
        width, end, (*shapes, *below), "Time to the next treatment of the same foot", _told(content)
    )


def _band(content: TimeToNext, ground: Plot, days: Scale) -> list[Shape]:
    end = days.at(content.last_day)

    def edge(pick: Callable[[FreeStep], float | None]) -> tuple[Point, ...]:
        points = [
            (days.at(step.day), ground.scale.at(step.share.value if (at := pick(step)) is None else at))
            for step in content.steps
        ]
        return stairs(points, end)

    upper, lower = edge(lambda step: step.share.high), edge(lambda step: step.share.low)
    return [Polygon((*upper, *reversed(lower)), Tint.GROUND, Pen(Tint.RULE, 0.25))]


def _half(content: TimeToNext, ground: Plot, days: Scale) -> list[Shape]:
    """Where the line comes down to half, if it does."""
    if content.half_by is None:
        return []
    x, y = days.at(content.half_by), ground.scale.at(50)
    words = f"half by day {content.half_by}"
    room = width_of(words, BODY, WORDS) + 2
    is_right = x + room <= ground.right
    at = (x + 1.5, y - 1.5) if is_right else (x - 1.5, ground.foot - 1.5)
    return [
        Line(((ground.left, y), (x, y), (x, ground.foot)), _HALF),
        Text(at, words, WORDS, bold=True, anchor="start" if is_right else "end"),
    ]


def _below(content: TimeToNext, ground: Plot, days: Scale) -> tuple[list[Shape], float]:
    """The days, and under each how many feet were still followed then."""
    shapes: list[Shape] = [
        Text((ground.left, ground.foot + 10.4), "days after the treatment", WORDS, tint=Tint.QUIET)
    ]
    for day, _ in (followed := _followed(content, days)) or [(tick, 0) for tick in _round_days(content)]:
        x = days.at(day)
        shapes.append(Line(((x, ground.foot), (x, ground.foot + 1.2)), Pen(Tint.INK, 0.35)))
        shapes.append(centred((x, ground.foot + 5.2), tick_words(day)))
    if not followed:
        return shapes, ground.foot + 11.6
    shapes.append(Text((ground.left, ground.foot + 16.2), "feet still followed:", WORDS))
    shapes += [
        Text((days.at(day), ground.foot + 21.2), f"{feet:,}", WORDS, anchor="middle")
        for day, feet in followed
    ]
    return shapes, ground.foot + 22.4


def _round_days(content: TimeToNext) -> list[float]:
    return [tick for tick in ticks(content.last_day) if tick <= content.last_day]


def _followed(content: TimeToNext, days: Scale) -> list[tuple[float, int]]:
    """As many of the counts as stand apart, from the left."""
    kept: list[tuple[float, int]] = []
    for day, feet in content.followed:
        widest = max(width_of(words, BODY, WORDS) for words in (f"{feet:,}", tick_words(day)))
        if day <= content.last_day and (not kept or days.at(day) - days.at(kept[-1][0]) >= widest + 3):
            kept.append((day, feet))
    return kept


def _told(content: TimeToNext) -> str:
    half = "" if content.half_by is None else f"half were treated again by day {content.half_by}; "
    last = content.steps[-1]
    followed = ", ".join(f"{feet} on day {day}" for day, feet in content.followed)
    return (
        f"{half}at day {content.last_day}, {interval_words(last.share)} of 100 were not treated again"
        f"{f'; feet still followed: {followed}' if followed else ''}"
    )

"""How the cost of the best week fell while the planner thought: a line of steps, labelled at both ends."""

from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal

from trimops.kernel.money import round_money
from trimops.paper.colours import Tint
from trimops.paper.drawing import Circle, Drawing, Line, Pen, Point, Shape, Text
from trimops.paper.figures import money
from trimops.paper.typefaces import BOLD, width_of

_WORDS = 4.0
_LEFT, _RIGHT, _TOP, _LOW = 2.0, 2.0, 8.0, 12.0


@dataclass(frozen=True)
class CostChart:
    """(seconds, cost in the currency's whole unit) in order of time, the cost never rising; at least two points."""

    points: tuple[tuple[float, float], ...]
    currency: str = "GBP"


def cost_chart(content: CostChart, width: float = 84.0, height: float = 40.0) -> Drawing:
    """The chart `width` x `height` mm. ValueError with fewer than two points."""
    if len(content.points) < 2:
        raise ValueError("a line needs two points")
    (began, first), (ended, last) = content.points[0], content.points[-1]
    at = _scale(content, (width, height))
    steps = _steps([at(*point) for point in content.points])
    foot = height - _LOW + 2
    shapes: list[Shape] = [
        Line(((_LEFT, foot), (width - _RIGHT, foot)), Pen(Tint.RULE, 0.3)),
        Line(tuple(steps), Pen(Tint.PLANNED, 0.6)),
        Circle(steps[-1], 1.0, Tint.PLANNED, None),
        Text((_LEFT, 5), _whole(first, content), _WORDS),
        _end_words(steps, _whole(last, content)),
        Text((_LEFT, height - 4), f"{began:.0f} s", _WORDS, tint=Tint.QUIET),
        Text((width - _RIGHT, height - 4), f"{ended:.0f} s", _WORDS, tint=Tint.QUIET, anchor="end"),
    ]
    return Drawing(width, height, tuple(shapes), "How the cost fell", told(content))


def _end_words(steps: list[Point], words: str) -> Text:
    """What it came to, above the line as high as it still runs where the words begin."""
    right, left = steps[-1][0], steps[-1][0] - width_of(words, BOLD, _WORDS) - 1
    height = next((y for x, y in reversed(steps) if x <= left), steps[0][1])
    return Text((right, height - 1.8), words, _WORDS, bold=True, anchor="end")


def told(content: CostChart) -> str:
    """The finding as a sentence."""
    (_, first), (ended, last) = content.points[0], content.points[-1]
    return f"From {_whole(first, content)} to {_whole(last, content)} in {ended:.0f} seconds."


def _whole(cost: float, content: CostChart) -> str:
    return money(round_money(Decimal(str(cost)), 0), content.currency, 0)


def _scale(content: CostChart, size: Point) -> Callable[[float, float], Point]:
    """Where a point lies; the cost fills the height between the words, however little it fell."""
    (began, first), (ended, last) = content.points[0], content.points[-1]
    long, deep = max(ended - began, 0.001), max(first - last, 0.001)

    def at(seconds: float, cost: float) -> Point:
        x = _LEFT + (size[0] - _LEFT - _RIGHT) * (seconds - began) / long
        return x, _TOP + (size[1] - _TOP - _LOW) * (first - cost) / deep

    return at


def _steps(points: list[Point]) -> list[Point]:
    """Level until the next find, then straight down."""
    path = [points[0]]
    for x, y in points[1:]:
        path += [(x, path[-1][1]), (x, y)]
    return path

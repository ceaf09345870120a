"""What will be left of a consumable, day by day: the middle, and how far it may fall, against nought and reorder point.

What is left is the stock, and what comes by then, less the use added up. The bands end at the 80 and 95 % quantiles of
that use: 8 of 10 times, and 19 of 20 times, no less is left.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from functools import partial

from trimops.paper.colours import Meaning, Tint, tint_of
from trimops.paper.days import day_short
from trimops.paper.drawing import Drawing, Line, Pen, Point, Polygon, Shape, Text, box
from trimops.paper.figures import quantity
from trimops.paper.signs import sign
from trimops.paper.typefaces import BODY, width_of
from visits.documents.herd.axis import Scale, ticks
from visits.documents.herd.key import KeyItem, key
from visits.documents.herd.marks import WORDS, centred_within
from visits.documents.herd.plot import Plot, plot

_HEIGHT = 46.0
_SIGN = 3.4
_HEAD = 6.0
_REORDER = Pen(Tint.INK, 0.3, (1.4, 1.0))


@dataclass(frozen=True)
class FanDay:
    """Use added up from today to the end of the day, in the unit: the 50, 80 and 95 % quantiles."""

    day: date
    q50: Decimal
    q80: Decimal
    q95: Decimal


@dataclass(frozen=True)
class Fan:
    """`stock` is what there is today, `arrivals` what is on order with its day; `unit` stands over the figures.

    `runs_out` is the day by which running out is more likely than not, `order_by` the last day to order; None beyond
    the days shown.
    """

    unit: str
    today: date
    stock: Decimal
    days: tuple[FanDay, ...]
    arrivals: tuple[tuple[date, Decimal], ...] = ()
    reorder_point: Decimal | None = None
    runs_out: date | None = None
    order_by: date | None = None

    def left(self, at: FanDay, pick: Callable[[FanDay], Decimal]) -> Decimal:
        """What is left at the end of that day; never less than nothing."""
        come = sum((amount for day, amount in self.arrivals if day <= at.day), Decimal(0))
        return max(Decimal(0), self.stock + come - pick(at))


def draw_fan(fan: Fan, width: float = 86.0) -> Drawing | None:
    """The picture `width` mm across; None when no day is foreseen."""
    if not fan.days:
        return None
    ground = plot(f"left, {fan.unit}", ticks(_top(fan)), width, _HEIGHT, _HEAD)
    across = Scale(fan.today.toordinal(), fan.days[-1].day.toordinal(), ground.left, ground.right - 2)
    runs = {name: _run(fan, pick, across, ground) for name, pick in _PICKS.items()}
    shapes = [
        *_band(runs["q80"], runs["q95"], Tint.GROUND),
        *_band(runs["q50"], runs["q80"], Tint.RULE),
        *ground.shapes,
        Line(tuple(runs["q50"]), Pen(Tint.INK, 0.6)),
        *_reorder(fan, ground),
        *_flags(fan, across, ground),
        *_day_ticks(fan, across, ground),
    ]
    below, end = key(_key_items(fan), ground.foot + 7.2, width)
    return Drawing(width, end, (*shapes, *below), "What will be left", told(fan))


_PICKS: dict[str, Callable[[FanDay], Decimal]] = {
    "q50": lambda day: day.q50,
    "q80": lambda day: day.q80,
    "q95": lambda day: day.q95,
}


def _top(fan: Fan) -> float:
    highest = max(fan.left(day, _PICKS["q50"]) for day in fan.days)
    return float(max(fan.stock, highest, fan.reorder_point or 0)) or 1.0


def _run(fan: Fan, pick: Callable[[FanDay], Decimal], across: Scale, ground: Plot) -> list[Point]:
    first = (across.at(fan.today.toordinal()), ground.scale.at(float(max(fan.stock, Decimal(0)))))
    later = [
        (across.at(day.day.toordinal()), ground.scale.at(float(fan.left(day, pick)))) for day in fan.days
    ]
    return [first, *later]


def _band(upper: Sequence[Point], lower: Sequence[Point], fill: Tint) -> list[Shape]:
    return [Polygon((*upper, *reversed(lower)), fill, Pen(Tint.QUIET, 0.15))]


def _reorder(fan: Fan, ground: Plot) -> list[Shape]:
    """The level at which an order is due, its words at the right where the fan has fallen."""
    if not fan.reorder_point:
        return []
    y = ground.scale.at(float(fan.reorder_point))
    words = f"order at {quantity(fan.reorder_point)}"
    room = width_of(words, BODY, WORDS)
    back = box(ground.right - room - 0.8, y - 4.6, ground.right + 0.4, y - 0.5)
    return [
        Line(((ground.left, y), (ground.right, y)), _REORDER),
        Polygon(back, Tint.PAPER, None),
        Text((ground.right, y - 1.4), words, WORDS, anchor="end"),
    ]


def _flags(fan: Fan, across: Scale, ground: Plot) -> list[Shape]:
    """When to order and when it runs out: a sign over the day, and a stroke down to it."""
    shapes: list[Shape] = []
    for meaning, day in ((Meaning.DUE, fan.order_by), (Meaning.URGENT, fan.runs_out)):
        if day is None or day > fan.days[-1].day:
            continue
        x, top = across.at(day.toordinal()), ground.top - _HEAD + 2.4
        pen = Pen(tint_of(meaning), 0.35, (1.4, 1.0))
        shapes += [Line(((x, top + _SIGN / 2), (x, ground.foot)), pen), *sign(meaning, (x, top), _SIGN)]
    return shapes


def _day_ticks(fan: Fan, across: Scale, ground: Plot) -> list[Shape]:
    """Today and every seventh day after it; its words where they have room."""
    shapes: list[Shape] = []
    end = -1.0
    for ordinal in range(fan.today.toordinal(), fan.days[-1].day.toordinal() + 1, 7):
        x, words = across.at(ordinal), day_short(date.fromordinal(ordinal)).split(" ", 1)[1]
        shapes.append(Line(((x, ground.foot), (x, ground.foot + 1.2)), Pen(Tint.INK, 0.35)))
        half = width_of(words, BODY, WORDS) / 2
        middle = min(x, ground.right + 1 - half)
        if middle - half > end:
            shapes.append(centred_within((middle, ground.foot + 5.2), words, ground.right + 1))
            end = middle + half + 1.5
    return shapes


def _key_items(fan: Fan) -> list[KeyItem]:
    items = [
        KeyItem(
            lambda at: [Line(((at[0] - 1.7, at[1]), (at[0] + 1.7, at[1])), Pen(Tint.INK, 0.6))], "middle"
        ),
        KeyItem(partial(_swatch, Tint.RULE), "no lower 8 of 10 times"),
        KeyItem(partial(_swatch, Tint.GROUND), "no lower 19 of 20 times"),
    ]
    if fan.order_by is not None and fan.order_by <= fan.days[-1].day:
        words = f"order by {day_short(fan.order_by)}"
        items.append(KeyItem(partial(sign, Meaning.DUE, size=3.0), words))
    if fan.runs_out is not None and fan.runs_out <= fan.days[-1].day:
        words = f"likely gone {day_short(fan.runs_out)}"
        items.append(KeyItem(partial(sign, Meaning.URGENT, size=3.0), words))
    return items


def _swatch(fill: Tint, at: Point) -> list[Shape]:
    x, y = at
    return [Polygon(box(x - 1.7, y - 1.1, x + 1.7, y + 1.1), fill, Pen(Tint.QUIET, 0.2))]


def told(fan: Fan) -> str:
    """The picture for who does not see it: what is left at the end of each week."""
    parts = []
    for day in fan.days[6::7]:
        middle, low, lowest = (quantity(fan.left(day, pick)) for pick in _PICKS.values())
        often = f"{low} or more 8 of 10 times, {lowest} or more 19 of 20 times"
        parts.append(f"{day_short(day.day)}: {middle} in the middle, {often}")
    order = f"; order by {day_short(fan.order_by)}" if fan.order_by else ""
    gone = f"; likely gone {day_short(fan.runs_out)}" if fan.runs_out else ""
    return f"Left, in {fan.unit}. {'; '.join(parts)}{order}{gone}"

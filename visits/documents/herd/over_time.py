"""How a herd's figure ran over the years: every trim round with its interval, and where the chart flags a change.

Rounds of the whole herd are full dots joined by a line; rounds of picked cows stand hollow and by themselves.
"""

from collections.abc import Callable
from datetime import date, timedelta
from functools import partial

from trimops.paper.colours import Meaning, Tint, tint_of
from trimops.paper.days import day_plain
from trimops.paper.drawing import Circle, Drawing, Line, Pen, Shape
from trimops.paper.figures import counted
from trimops.paper.signs import sign
from visits.documents.herd.axis import Scale, interval_words, month, month_ticks, ticks, top_of
from visits.documents.herd.key import KeyItem, key
from visits.documents.herd.marks import centred_within, mark, standing
from visits.documents.herd.plot import Plot, plot
from visits.documents.herd_story_content import ChangeSeen, OverTime, TimePoint

_HEIGHT = 36.0
_SIGN = 3.6
_SIGN_IN_KEY = 3.0
_LABEL_ROOM = 20.0
_LONE = timedelta(days=100)
_MANY = 20
_CROWD = 60


def over_time(content: OverTime, width: float) -> Drawing:
    """The picture. ValueError without a point."""
    if content.is_empty:
        raise ValueError("no round to draw")
    readings = [point.reading for point in content.points]
    ground = plot(content.unit, ticks(top_of(readings)), width, _HEIGHT, _SIGN + 1 if content.changes else 0)
    across = _across(content, ground)
    shapes = [*ground.shapes, *_months(content, ground, across)]
    for point in content.points:
        if not point.whole_herd:
            shapes += _picked(point, content, ground, across)
    shapes += _joined(content, ground, across)
    for change in content.changes:
        shapes += _change(change, ground, across)
    for point in content.points:
        if point.whole_herd:
            shapes += standing("dot", across(point.day), ground.scale, point.reading, _radius(content))
    below, end = key(_key_items(content), ground.foot + 7.2, width)
    return Drawing(width, end, (*shapes, *below), f"Over time: {content.unit}", _told(content))


def _radius(content: OverTime) -> float:
    return 1.2 if len(content.points) <= _MANY else 0.95


def _picked(
    point: TimePoint, content: OverTime, ground: Plot, across: Callable[[date], float]
) -> list[Shape]:
    """A round of picked cows; where very many stand side by side, a faint ring without its interval."""
    x = across(point.day)
    if len(content.points) <= _CROWD:
        return standing("ring", x, ground.scale, point.reading, _radius(content))
    return [Circle((x, ground.scale.at(point.reading.value)), 0.6, Tint.PAPER, Pen(Tint.RULE, 0.25))]


def _across(content: OverTime, ground: Plot) -> Callable[[date], float]:
    """Days from left to right; a lone round stands in the middle."""
    days = [point.day for point in content.points] + [change.since for change in content.changes]
    first, last = min(days), max(days)
    if first == last:
        first, last = first - _LONE, last + _LONE
    scale = Scale(first.toordinal(), last.toordinal(), ground.left + 3, ground.right - 3)
    return lambda day: scale.at(day.toordinal())


def _months(content: OverTime, ground: Plot, across: Callable[[date], float]) -> list[Shape]:
    first, last = content.points[0].day, content.points[-1].day
    if first == last:
        return [centred_within((across(first), ground.foot + 5.2), month(first), ground.right + 1)]
    most = int((ground.right - ground.left) // _LABEL_ROOM)
    shapes: list[Shape] = []
    for day, words in month_ticks(first, last, most) or ((first, month(first)),):
        x = across(day)
        shapes.append(Line(((x, ground.foot), (x, ground.foot + 1.2)), Pen(Tint.INK, 0.35)))
        shapes.append(centred_within((x, ground.foot + 5.2), words, ground.right + 1))
    return shapes


def _joined(content: OverTime, ground: Plot, across: Callable[[date], float]) -> list[Shape]:
    whole = [point for point in content.points if point.whole_herd]
    run = tuple((across(point.day), ground.scale.at(point.reading.value)) for point in whole)
    return [Line(run, Pen(Tint.QUIET, 0.25))] if len(run) > 1 else []


def _meaning(change: ChangeSeen) -> Meaning:
    return Meaning.DUE if change.rises else Meaning.DONE


def _change(change: ChangeSeen, ground: Plot, across: Callable[[date], float]) -> list[Shape]:
    x, top = across(change.since), ground.top - _SIGN / 2 - 1.4
    pen = Pen(tint_of(_meaning(change)), 0.35, (1.4, 1.0))
    return [Line(((x, top + _SIGN / 2), (x, ground.foot)), pen), *sign(_meaning(change), (x, top), _SIGN)]


def _change_words(content: OverTime, *, rises: bool) -> str:
    since = [month(change.since) for change in content.changes if change.rises is rises]
    return f"{'higher' if rises else 'lower'} since {', '.join(since)}" if since else ""


def _key_items(content: OverTime) -> list[KeyItem]:
    items = []
    if any(point.whole_herd for point in content.points):
        items.append(KeyItem(lambda at: [mark("dot", at)], "whole herd"))
    if any(not point.whole_herd for point in content.points):
        items.append(KeyItem(lambda at: [mark("ring", at)], "picked cows, not the herd"))
    for rises in (True, False):
        if words := _change_words(content, rises=rises):
            items.append(
                KeyItem(partial(sign, _meaning(ChangeSeen(date.min, rises)), size=_SIGN_IN_KEY), words)
            )
    return items


def _told(content: OverTime) -> str:
    """Every round; of a crowd only those of the whole herd, and how many others there were."""
    told = [point for point in content.points if point.whole_herd or len(content.points) <= _CROWD]
    parts = [_point_words(point) for point in told]
    if left := len(content.points) - len(told):
        parts.append(counted(left, "round of picked cows", "rounds of picked cows"))
    parts += [words for rises in (True, False) if (words := _change_words(content, rises=rises))]
    return "; ".join(parts)


def _point_words(point: TimePoint) -> str:
    seen = f", {counted(point.seen, 'cow')} seen" if point.seen else ""
    whose = "whole herd" if point.whole_herd else "picked cows"
    return f"{day_plain(point.day)}: {interval_words(point.reading)}, {whose}{seen}"

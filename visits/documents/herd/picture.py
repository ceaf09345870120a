"""The one door to the six pictures of a herd's feet."""

from functools import singledispatch

from trimops.paper.drawing import Drawing
from visits.documents.herd.against_others import against_others
from visits.documents.herd.kinds import kinds
from visits.documents.herd.over_time import over_time
from visits.documents.herd.sole_heat import sole_heat
from visits.documents.herd.time_to_next import time_to_next
from visits.documents.herd.which_cows import which_cows
from visits.documents.herd_story_content import (
    AgainstOthers,
    HerdContent,
    Kinds,
    OverTime,
    SoleHeat,
    TimeToNext,
    WhichCows,
)

WIDTH = 86.0


def draw(content: HerdContent, width: float = WIDTH) -> Drawing | None:
    """The picture `width` mm across (from 80), as tall as it needs; None when there is nothing to draw.

    At 86 mm its words are 15 px on a phone 360 px wide. On a page: `to_svg(drawing, "herd-picture")`.
    """
    return None if content.is_empty else _drawn(content, width)


@singledispatch
def _drawn(content: HerdContent, _width: float) -> Drawing:
    raise TypeError(f"no picture of {type(content).__name__}")


@_drawn.register
def _(content: OverTime, width: float) -> Drawing:
    return over_time(content, width)


@_drawn.register
def _(content: Kinds, width: float) -> Drawing:
    return kinds(content, width)


@_drawn.register
def _(content: SoleHeat, width: float) -> Drawing:
    return sole_heat(content, width)


@_drawn.register
def _(content: WhichCows, width: float) -> Drawing:
    return which_cows(content, width)


@_drawn.register
def _(content: TimeToNext, width: float) -> Drawing:
    return time_to_next(content, width)


@_drawn.register
def _(content: AgainstOthers, width: float) -> Drawing:
    return against_others(content, width)

"""What will be left, drawn: the fan, the reorder point and the days to know."""

from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal

import pytest

from tests.visits.documents.drawing_checks import clashing_words, stray_shapes
from trimops.paper.colours import Tint
from trimops.paper.drawing import Line, Polygon, Text
from visits.documents.kit.fan import Fan, FanDay, draw_fan, told

TODAY = date(2026, 3, 3)
DAYS = tuple(
    FanDay(TODAY + timedelta(n), Decimal(10 * n), Decimal(10 * n + 20), Decimal(10 * n + 50))
    for n in range(1, 29)
)
GLUE = Fan("ml", TODAY, Decimal(200), DAYS, (), Decimal(90), TODAY + timedelta(20), TODAY + timedelta(6))


def words_of(drawing):
    return [shape.words for shape in drawing.shapes if isinstance(shape, Text)]


def middle_of(drawing):
    (line,) = [s for s in drawing.shapes if isinstance(s, Line) and s.pen.width == 0.6 and len(s.points) > 2]
    return line.points


@pytest.mark.parametrize("width", [80, 86, 140])
@pytest.mark.parametrize(
    "fan",
    [
        GLUE,
        replace(GLUE, stock=Decimal(-5)),
        replace(GLUE, stock=Decimal(120_000)),
        replace(GLUE, arrivals=((TODAY + timedelta(3), Decimal(5000)),)),
        replace(GLUE, days=DAYS[:3], reorder_point=None, runs_out=None, order_by=None),
    ],
)
def test_it_keeps_within_its_sheet_and_no_words_lie_over_others(fan, width):
    drawing = draw_fan(fan, width)
    assert stray_shapes(drawing) == []
    assert clashing_words(drawing) == []


def test_the_middle_falls_to_nought_and_no_further():
    points = middle_of(draw_fan(GLUE))
    heights = [y for _, y in points]
    assert heights == sorted(heights)
    assert heights[20] == heights[-1]
    assert heights[19] < heights[20]


def test_what_is_on_order_lifts_it_on_its_day():
    arrival = (TODAY + timedelta(9), Decimal(100))
    points = middle_of(draw_fan(replace(GLUE, arrivals=(arrival,))))
    assert [n for n in range(1, 29) if points[n][1] < points[n - 1][1]] == [9]


def test_the_bands_lie_below_the_middle_in_their_order():
    drawing = draw_fan(GLUE)
    (outer,) = [
        s for s in drawing.shapes if isinstance(s, Polygon) and s.fill is Tint.GROUND and len(s.points) > 9
    ]
    (inner,) = [
        s for s in drawing.shapes if isinstance(s, Polygon) and s.fill is Tint.RULE and len(s.points) > 9
    ]
    assert inner.points[:29] == tuple(middle_of(drawing))
    assert outer.points[:29] == tuple(reversed(inner.points[29:]))
    assert all(
        low >= high for (_, high), (_, low) in zip(outer.points[:29], outer.points[:28:-1], strict=True)
    )


def test_the_days_to_know_and_the_reorder_point_are_named():
    words = words_of(draw_fan(GLUE))
    assert {"order at 90", "order by Mon 9 Mar", "likely gone Mon 23 Mar"} <= set(words)


def test_days_beyond_those_shown_are_not_drawn():
    words = words_of(draw_fan(replace(GLUE, runs_out=TODAY + timedelta(40), order_by=None)))
    assert not [each for each in words if each.startswith(("likely", "order by"))]


def test_without_a_day_there_is_nothing_to_draw():
    assert draw_fan(replace(GLUE, days=())) is None


def test_it_is_told_week_by_week():
    words = told(GLUE)
    assert "Tue 10 Mar: 130 in the middle, 110 or more 8 of 10 times, 80 or more 19 of 20 times" in words
    assert words.endswith("order by Mon 9 Mar; likely gone Mon 23 Mar")

import pytest

from tests.visits.documents.ribbon_days import EMPTY_DAY, FULL_DAY
from trimops.paper.colours import Tint
from trimops.paper.drawing import Line, Polygon
from visits.documents.day_ribbon_content import TimeScale
from visits.documents.ribbon_band import band_shapes

SCALE = TimeScale(FULL_DAY.begins, FULL_DAY.ends, 0, 110)  # 10 mm to the hour


def across(along, lane):
    return along, lane


def visit_boxes(place):
    shapes = band_shapes(FULL_DAY, SCALE, place, (5, 20))
    return [shape for shape in shapes if isinstance(shape, Polygon) and shape.fill is Tint.GROUND]


def test_visits_are_as_long_as_they_last():
    lengths = [box.points[1][0] - box.points[0][0] for box in visit_boxes(across)]
    assert lengths == pytest.approx([30.83, 6.67, 5.5, 15.83], abs=0.01)


def test_drives_are_thin_lines_as_long_as_they_take():
    shapes = band_shapes(FULL_DAY, SCALE, across, (5, 20))
    drives = [s for s in shapes if isinstance(s, Line) and s.pen.width == 0.5 and s.pen.tint is Tint.INK]
    assert [line.points[1][0] - line.points[0][0] for line in drives] == pytest.approx(
        [7.5, 2.5, 2, 1.67, 8.33], abs=0.01
    )


def test_nothing_but_dashed_ends_is_drawn_where_the_meal_is():
    shapes = band_shapes(FULL_DAY, SCALE, across, (5, 20))
    dashed = [shape.points[0][0] for shape in shapes if isinstance(shape, Line) and shape.pen.dashes]
    assert dashed == pytest.approx([55, 60])


def test_milkings_are_hatched_beside_the_band():
    shapes = band_shapes(FULL_DAY, SCALE, across, (5, 20))
    hatching = [s for s in shapes if isinstance(s, Line) and s.pen.tint is Tint.QUIET and not s.pen.dashes]
    assert hatching
    assert all(y > 20 for line in hatching for _, y in line.points)
    assert all(x <= 15.01 or x >= 84.99 for line in hatching for x, _ in line.points)


def test_down_is_across_with_its_axes_changed():
    down = visit_boxes(lambda along, lane: (lane, along))
    assert [[(y, x) for x, y in box.points] for box in down] == [
        list(box.points) for box in visit_boxes(across)
    ]


def test_an_empty_day_is_its_hours_only():
    assert len(band_shapes(EMPTY_DAY, SCALE, across, (5, 20))) == 12

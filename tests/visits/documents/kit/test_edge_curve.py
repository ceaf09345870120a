import pytest

from trimops.paper.colours import Tint
from trimops.paper.drawing import Line, Polygon, Text
from trimops.paper.to_svg import to_svg
from visits.documents.kit.edge_curve import CurvePoint, EdgeCurveContent, edge_curve_drawing

POINTS = (CurvePoint(0, 100, 100, 100), CurvePoint(20, 60, 40, 75), CurvePoint(30, 40, 22, 58))


def content(**changes):
    words = {
        "points": POINTS,
        "last": 45,
        "got_there": ((0, 12), (20, 9), (40, 2)),
        "words": "edges from the belt",
        "half_by": 30,
        **changes,
    }
    return EdgeCurveContent(**words)


def drawn(**changes):
    return edge_curve_drawing(content(**changes))


def words_of(drawing):
    return [shape.words for shape in drawing.shapes if isinstance(shape, Text)]


def test_the_line_is_level_and_falls_straight_at_each_step():
    line = next(s for s in drawn().shapes if isinstance(s, Line) and s.pen.width == 0.6)
    assert len(line.points) == 6
    for (x, y), (next_x, next_y) in zip(line.points, line.points[1:], strict=False):
        assert x == next_x or y == next_y
        assert next_x >= x
        assert next_y >= y


def test_the_interval_is_a_band_under_the_line():
    drawing = drawn()
    band = drawing.shapes[0]
    assert isinstance(band, Polygon)
    assert band.fill == Tint.GROUND


def test_half_and_how_many_got_so_far_are_written():
    found = words_of(drawn())
    assert {"half by 30", "12", "9", "2", "edges from the belt"} <= set(found)
    assert "half by 30" not in words_of(drawn(half_by=None))


def test_the_wider_group_and_the_edge_looked_at_have_a_key():
    found = words_of(drawn(wider=POINTS, wider_last=60, wider_words="all edges", now=17))
    assert {"all edges", "this edge now: 17"} <= set(found)


def test_half_far_to_the_right_keeps_its_words_on_the_sheet():
    text = next(s for s in drawn(half_by=44).shapes if isinstance(s, Text) and s.words == "half by 44")
    assert text.anchor == "end"


def test_it_is_told_in_words():
    svg = to_svg(drawn())
    assert "half were dull by 30 cows; at 45 cows 40 of 100 were still sharp (22 to 58)" in svg


def test_without_a_dull_edge_there_is_no_picture():
    assert content(points=POINTS[:1]).is_empty
    with pytest.raises(ValueError, match="no edge"):
        edge_curve_drawing(content(points=POINTS[:1]))

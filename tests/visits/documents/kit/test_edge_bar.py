import pytest

from trimops.paper.colours import Tint
from trimops.paper.drawing import Circle, Line, Polygon
from trimops.paper.to_svg import to_svg
from visits.documents.kit.edge_bar import EdgeBar, edge_bar

BAR = EdgeBar(20, sure=5, low=5, middle=15, high=30)


def shapes(bar, kind, longest=50):
    return [shape for shape in edge_bar(bar, longest, "Red: 20 cows").shapes if isinstance(shape, kind)]


def test_the_marks_stand_where_the_cows_are():
    step = (56 - 2 - 1) / 50
    (dot,) = shapes(BAR, Circle)
    assert dot.centre[0] == pytest.approx(1 + 35 * step)
    behind, sure = shapes(BAR, Polygon)
    assert max(x for x, _ in behind.points) == pytest.approx(1 + 20 * step)
    assert max(x for x, _ in sure.points) == pytest.approx(1 + 25 * step)


def test_a_stroke_stands_at_every_ten_cows():
    upright = [
        line
        for line in shapes(BAR, Line)
        if line.points[0][0] == line.points[1][0] and line.pen.tint == Tint.QUIET
    ]
    assert len(upright) == 6


def test_a_dull_edge_is_hatched_and_shows_nothing_to_come():
    dull = EdgeBar(20, is_dull=True, sure=5, high=9)
    assert dull.end == 20
    assert not shapes(dull, Circle)
    assert any(line.pen.tint == Tint.DUE for line in shapes(dull, Line))


def test_a_figure_of_the_businesss_own_has_no_interval():
    assert not shapes(EdgeBar(3, sure=22, has_interval=False), Circle)


def test_nothing_is_drawn_beyond_the_sheet_and_the_words_are_read_out():
    svg = to_svg(edge_bar(BAR, 0, "Red: 20 cows"))
    assert 'aria-label="Red: 20 cows"' in svg
    drawing = edge_bar(BAR, 0, "")
    assert all(0 <= x <= 56 for shape in drawing.shapes if isinstance(shape, Line) for x, _ in shape.points)

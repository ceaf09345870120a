"""The line of the falling cost."""

from itertools import pairwise

import pytest

from trimops.paper.drawing import Line, Text
from trimops.paper.to_svg import to_svg
from trimops.paper.typefaces import BOLD, width_of
from visits.documents.cost_chart import CostChart, cost_chart, told

FALL = CostChart(((0.0, 5704.0), (1.0, 4796.07), (6.0, 4685.96), (10.0, 4685.96)))


def line_of(drawing):
    return [shape for shape in drawing.shapes if isinstance(shape, Line)][-1].points


def test_the_line_goes_right_and_down_only_in_level_and_upright_steps():
    points = line_of(cost_chart(FALL))
    for (x, y), (further, deeper) in pairwise(points):
        assert further >= x
        assert deeper >= y
        assert further == x or deeper == y


def test_it_starts_high_on_the_left_and_ends_low_on_the_right_within_the_sheet():
    drawing = cost_chart(FALL)
    (left, top), (right, low) = line_of(drawing)[0], line_of(drawing)[-1]
    assert 0 < left < 5
    assert drawing.width - 5 < right < drawing.width
    assert 0 < top < low < drawing.height


def test_both_ends_are_labelled_and_the_finding_is_a_sentence():
    words = [shape.words for shape in cost_chart(FALL).shapes if isinstance(shape, Text)]
    assert words == ["£5,704", "£4,686", "0 s", "10 s"]
    assert told(FALL) == "From £5,704 to £4,686 in 10 seconds."
    assert told(FALL) in to_svg(cost_chart(FALL))


def test_words_are_fifteen_pixels_where_it_is_shown_as_drawn():
    sizes = {shape.size for shape in cost_chart(FALL).shapes if isinstance(shape, Text)}
    assert min(sizes) * 96 / 25.4 >= 15


@pytest.mark.parametrize("drop", [1.0, 6.0, 9.0, 9.95])
def test_the_last_words_never_lie_on_the_line_however_late_it_falls(drop):
    drawing = cost_chart(CostChart(((0.0, 900.0), (drop, 800.0), (10.0, 799.0))))
    words = next(shape for shape in drawing.shapes if isinstance(shape, Text) and shape.anchor == "end")
    left = words.at[0] - width_of(words.words, BOLD, words.size)
    under = [y for x, y in line_of(drawing) if x >= left]
    assert all(y > words.at[1] for y in under)
    assert words.at[1] - words.size > 0


def test_a_cost_that_never_fell_is_a_level_line():
    points = line_of(cost_chart(CostChart(((0.0, 100.0), (5.0, 100.0)))))
    assert len({y for _, y in points}) == 1


def test_one_point_is_no_line():
    with pytest.raises(ValueError, match="two points"):
        cost_chart(CostChart(((0.0, 100.0),)))

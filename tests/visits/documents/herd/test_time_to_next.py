from dataclasses import replace
from itertools import pairwise

import pytest

from tests.visits.documents.herd_pictures import NEXT, NEXT_FEW, NEXT_MANY, NOTHING
from trimops.paper.colours import Tint
from trimops.paper.drawing import Line, Polygon, Text
from visits.documents.herd.time_to_next import time_to_next


def curve_of(drawing):
    (line,) = [s for s in drawing.shapes if isinstance(s, Line) and s.pen.width == 0.6]
    return line.points


def words_of(drawing):
    return [shape.words for shape in drawing.shapes if isinstance(shape, Text)]


def test_the_line_goes_right_and_down_in_level_and_upright_steps_to_the_last_day():
    points = curve_of(time_to_next(NEXT, 86))
    for (x, y), (further, deeper) in pairwise(points):
        assert further >= x
        assert deeper >= y
        assert further == x or deeper == y
    assert points[-1][0] == pytest.approx(86 - 1 - 3)


def test_the_band_lies_about_the_line():
    drawing = time_to_next(NEXT, 86)
    (band,) = [s for s in drawing.shapes if isinstance(s, Polygon) and s.fill is Tint.GROUND]
    end = [y for x, y in band.points if x == pytest.approx(82)]
    assert min(end) < curve_of(drawing)[-1][1] < max(end)


def test_half_is_marked_where_the_line_comes_down_to_it():
    drawing = time_to_next(NEXT, 86)
    assert "half by day 210" in words_of(drawing)
    (half,) = [s for s in drawing.shapes if isinstance(s, Line) and s.pen.dashes]
    assert half.points[1][0] in {x for x, _ in curve_of(drawing)}


def test_a_line_that_never_came_to_half_says_nothing_of_it():
    drawing = time_to_next(NEXT_FEW, 86)
    assert not any("half" in words for words in [*words_of(drawing), drawing.description])


def test_the_feet_still_followed_stand_under_their_days():
    drawing = time_to_next(NEXT, 86)
    below = sorted((s.at[1], s.at[0], s.words) for s in drawing.shapes if isinstance(s, Text))
    counts = [(words, x) for y, x, words in below if y == below[-1][0]]
    days = {words: x for y, x, words in below if words in ("100", "200", "300") and x > 20}
    assert counts == [
        ("64", curve_of(drawing)[0][0]),
        ("41", days["100"]),
        ("22", days["200"]),
        ("9", days["300"]),
    ]
    assert "feet still followed:" in words_of(drawing)


def test_so_many_counts_are_written_as_have_room():
    counts = [
        s for s in time_to_next(NEXT_MANY, 86).shapes if isinstance(s, Text) and s.words.startswith("1,")
    ]
    assert 3 <= len(counts) <= 8


def test_without_counts_the_words_for_them_are_left_out():
    drawing = time_to_next(replace(NEXT, followed=()), 86)
    assert "feet still followed:" not in words_of(drawing)
    assert drawing.height < time_to_next(NEXT, 86).height


def test_without_a_step_there_is_nothing_to_draw():
    with pytest.raises(ValueError, match="no foot"):
        time_to_next(NOTHING[4], 86)

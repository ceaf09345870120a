from dataclasses import replace
from datetime import date

import pytest

from tests.visits.documents.herd_pictures import NOTHING, OVER, OVER_FORTY, OVER_ONE, point
from trimops.paper.colours import Tint
from trimops.paper.drawing import Circle, Line, Polygon, Text
from visits.documents.herd.over_time import over_time
from visits.documents.herd_story_content import ChangeSeen


def dots_of(drawing, fill):
    """Marks in the plot: the key's own lies under all of them."""
    found = [shape.centre for shape in drawing.shapes if isinstance(shape, Circle) and shape.fill is fill]
    return sorted(found)[1:] if found else []


def words_of(drawing):
    return {shape.words for shape in drawing.shapes if isinstance(shape, Text)}


def joined(drawing):
    return [
        s.points
        for s in drawing.shapes
        if isinstance(s, Line) and len(s.points) > 2 and s.pen.tint is Tint.QUIET
    ]


def test_rounds_of_the_whole_herd_are_full_dots_joined_and_picked_cows_stand_hollow_by_themselves():
    drawing = over_time(OVER, 86)
    assert len(dots_of(drawing, Tint.INK)) == 4
    assert len(dots_of(drawing, Tint.PAPER)) == 1
    (run,) = joined(drawing)
    assert sorted(run) == dots_of(drawing, Tint.INK)
    assert {"whole herd", "picked cows, not the herd"} <= words_of(drawing)


def test_higher_figures_lie_higher_and_later_ones_further_right():
    dots = dots_of(over_time(OVER, 86), Tint.INK)
    heights = [-y for _, y in dots]
    assert heights[1] < heights[0] < heights[2] < heights[3], "38, 40, 51, 53"


def test_without_picked_cows_the_key_does_not_speak_of_them():
    assert "picked cows, not the herd" not in words_of(over_time(OVER_ONE, 86))


@pytest.mark.parametrize(
    ("rises", "words"), [(True, "higher since Sep 2025"), (False, "lower since Sep 2025")]
)
def test_a_change_is_told_by_its_sign_and_a_word(rises, words):
    drawing = over_time(replace(OVER, changes=(ChangeSeen(date(2025, 9, 2), rises),)), 86)
    assert words in words_of(drawing)
    assert words in drawing.description
    triangles = [s for s in drawing.shapes if isinstance(s, Polygon) and len(s.points) == 3]
    assert len(triangles) == (2 if rises else 0)


def test_a_change_stands_at_its_day():
    drawing = over_time(OVER, 86)
    (upright,) = [s for s in drawing.shapes if isinstance(s, Line) and s.pen.tint is Tint.DUE]
    assert upright.points[0][0] == dots_of(drawing, Tint.INK)[2][0]


def test_no_change_no_word_of_one():
    drawing = over_time(replace(OVER, changes=()), 86)
    assert not any("since" in words for words in words_of(drawing))


def test_a_lone_round_stands_in_the_middle_with_its_month():
    drawing = over_time(OVER_ONE, 86)
    ((x, _),) = [s.centre for s in drawing.shapes if isinstance(s, Circle) and s.centre[0] > 10]
    assert 40 < x < 56
    assert "Mar 2026" in words_of(drawing)


def test_two_rounds_within_a_month_are_told_apart_by_a_named_month():
    content = replace(OVER, points=(point(date(2026, 3, 2), 20), point(date(2026, 3, 20), 30)), changes=())
    assert "Mar 2026" in words_of(over_time(content, 86))


def test_forty_rounds_are_all_drawn():
    drawing = over_time(OVER_FORTY, 86)
    assert len(dots_of(drawing, Tint.INK)) + len(dots_of(drawing, Tint.PAPER)) >= 40
    assert {"2018", "2020", "2022", "2024"} <= words_of(drawing)


def test_a_hundred_rounds_of_picked_cows_go_without_their_lines_but_whole_herds_keep_them():
    points = tuple(point(date(2016 + i // 10, 1 + i % 10, 5), 30, whole_herd=i % 10 == 0) for i in range(100))
    drawing = over_time(replace(OVER, points=points, changes=()), 86)
    uprights = [s for s in drawing.shapes if isinstance(s, Line) and s.points[0][0] == s.points[1][0]]
    assert len([line for line in uprights if line.pen.dashes]) == 0
    assert len(dots_of(drawing, Tint.PAPER)) == 90
    assert drawing.description.count("whole herd") == 10
    assert drawing.description.endswith("90 rounds of picked cows")
    assert len([line for line in uprights if line.points[0][1] - line.points[1][1] > 2]) == 10


def test_without_a_round_there_is_nothing_to_draw():
    with pytest.raises(ValueError, match="no round"):
        over_time(NOTHING[0], 86)

from dataclasses import replace

import pytest

from tests.visits.documents.herd_pictures import NOTHING, WHICH, WHICH_LONG
from trimops.paper.drawing import Circle, Line, Text
from visits.documents.herd.which_cows import which_cows


def texts_of(drawing):
    return {shape.words: shape for shape in drawing.shapes if isinstance(shape, Text)}


def dashed(drawing):
    return [s for s in drawing.shapes if isinstance(s, Line) and s.pen.dashes]


def test_every_group_has_its_row_with_the_numbers_it_rests_on():
    drawing = which_cows(WHICH, 86)
    texts = texts_of(drawing)
    for label, counts in (("first", "6 of 31"), ("fourth and more", "13 of 19"), ("winter", "12 of 30")):
        assert texts[label].at[1] == texts[counts].at[1]
    assert [texts[label].bold for label in ("Lactation", "Days in milk", "Season")] == [True] * 3


def test_a_group_of_which_none_was_seen_has_no_mark():
    drawing = which_cows(WHICH, 86)
    assert texts_of(drawing)["none seen"].at[1] == texts_of(drawing)["summer"].at[1]
    assert len([s for s in drawing.shapes if isinstance(s, Circle)]) == 6


def test_marks_lie_in_the_order_of_their_figures():
    drawing = which_cows(WHICH, 86)
    at = {round(s.centre[1] + 1.4, 1): s.centre[0] for s in drawing.shapes if isinstance(s, Circle)}
    texts = texts_of(drawing)
    places = [
        at[round(texts[label].at[1], 1)]
        for label in ("dry", "first", "second", "fourth and more", "over 200")
    ]
    assert places == sorted(places)


def test_all_cows_are_a_line_through_all_rows_named_below():
    drawing = which_cows(WHICH, 86)
    through, swatch = sorted(dashed(drawing), key=lambda s: s.points[0][1] - s.points[1][1])
    assert through.points[1][1] - through.points[0][1] > 40
    assert "all cows: 39" in texts_of(drawing)
    assert dashed(which_cows(replace(WHICH, everyone=None), 86)) == []
    assert swatch.points[0][0] < 5


def test_a_long_label_is_cut_and_leaves_room_for_the_figures():
    drawing = which_cows(WHICH_LONG, 86)
    texts = texts_of(drawing)
    uprights = [
        s.points[0][0] for s in drawing.shapes if isinstance(s, Line) and s.points[0][0] == s.points[1][0]
    ]
    assert min(uprights) < 38
    assert any(words.endswith("…") for words in texts)
    assert "1,236 of 4,031" in texts


def test_without_a_group_there_is_nothing_to_draw():
    with pytest.raises(ValueError, match="no group"):
        which_cows(NOTHING[3], 86)

import pytest

from tests.visits.documents.drawing_checks import clashing_words, stray_shapes
from tests.visits.documents.ribbon_days import EMPTY_DAY, FULL_DAY
from trimops.paper.drawing import Line, Text
from visits.documents.ribbon_down import ribbon_down

PX = 25.4 / 96


def words_of(drawing):
    return [shape.words for shape in drawing.shapes if isinstance(shape, Text)]


@pytest.mark.parametrize("width", [80, 87, 120])
@pytest.mark.parametrize("day", [FULL_DAY, EMPTY_DAY])
def test_nothing_runs_off_the_sheet_and_no_words_meet(day, width):
    drawing = ribbon_down(day, width)
    assert stray_shapes(drawing) == []
    assert clashing_words(drawing) == []


def test_words_are_large_enough_for_a_phone():
    assert all(shape.size >= 13.5 * PX for shape in ribbon_down(FULL_DAY).shapes if isinstance(shape, Text))


def test_a_long_name_takes_two_lines_and_is_not_cut():
    joined = " ".join(words_of(ribbon_down(FULL_DAY, 87)))
    assert "Gwern-y-Ŵyl & Sons Dairy Farm" in joined


def test_words_that_had_to_move_keep_a_line_to_their_visit():
    colours = {
        shape.pen.tint
        for shape in ribbon_down(FULL_DAY).shapes
        if isinstance(shape, Line) and shape.pen.width == 0.25
    }
    assert {"due", "planned"} <= colours


def test_drives_meal_free_time_and_hatching_are_written():
    words = words_of(ribbon_down(FULL_DAY))
    assert {"drive 45 min, 31 km", "meal 30 min", "free 20 min", "hatched: milking"} <= set(words)
    assert "hatched: milking" not in words_of(ribbon_down(EMPTY_DAY))

import pytest

from tests.visits.documents.drawing_checks import clashing_words, stray_shapes
from tests.visits.documents.ribbon_days import EMPTY_DAY, FULL_DAY, LONG_NAME
from trimops.paper.drawing import Text
from visits.documents.ribbon_across import ribbon_across


def words_of(drawing):
    return [shape.words for shape in drawing.shapes if isinstance(shape, Text)]


@pytest.mark.parametrize("width", [150, 180, 250, 320])
@pytest.mark.parametrize("day", [FULL_DAY, EMPTY_DAY])
def test_nothing_runs_off_the_sheet_and_no_words_meet(day, width):
    drawing = ribbon_across(day, width)
    assert stray_shapes(drawing) == []
    assert clashing_words(drawing) == []


def test_a_long_visit_holds_its_words_and_a_short_one_has_them_below():
    drawing = ribbon_across(FULL_DAY, 250)
    texts = {shape.words: shape.at for shape in drawing.shapes if isinstance(shape, Text)}
    assert texts["High Thornbeck"][1] < 26
    assert texts[f"{LONG_NAME}, 11:50 to 12:30, 6 cows, hygiene 1"][1] > 30


@pytest.mark.parametrize("width", [150, 250])
def test_no_visit_goes_without_its_name(width):
    joined = " ".join(words_of(ribbon_across(FULL_DAY, width)))
    assert all(visit.name.split()[0] in joined for visit in FULL_DAY.visits)


def test_meal_milking_and_every_hour_are_written():
    words = words_of(ribbon_across(FULL_DAY, 250))
    assert {"meal", "30 min", "milking", "07:00", "18:00"} <= set(words)
    assert sum(":00" in word and len(word) == 5 for word in words) == 12


def test_an_empty_day_is_told_as_such_by_its_title():
    assert ribbon_across(EMPTY_DAY).title == "Wednesday: nothing planned"

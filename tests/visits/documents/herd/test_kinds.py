from dataclasses import replace

import pytest

from tests.visits.documents.herd_pictures import KINDS, KINDS_ONE, KINDS_TEN, NOTHING
from trimops.paper.colours import Tint
from trimops.paper.drawing import Circle, Line, Polygon, Text
from visits.documents.herd.kinds import kinds
from visits.documents.herd_story_content import KindYear, Reading


def words_of(drawing):
    return [shape.words for shape in drawing.shapes if isinstance(shape, Text)]


def joined(drawing):
    return [
        s for s in drawing.shapes if isinstance(s, Line) and s.pen.tint is Tint.QUIET and len(s.points) > 2
    ]


def test_the_two_kinds_have_marks_of_their_own_and_a_key():
    drawing = kinds(KINDS, 86)
    dots = [s for s in drawing.shapes if isinstance(s, Circle)]
    squares = [s for s in drawing.shapes if isinstance(s, Polygon)]
    assert len(dots) == 3 + 1
    assert len(squares) == 2 + 1
    assert words_of(drawing)[-2:] == ["infectious", "claw horn"]


def test_a_kind_that_is_not_known_is_no_zero():
    drawing = kinds(KINDS, 86)
    assert "2025: infectious 24 (17 to 33), claw horn not known" in drawing.description
    assert len([s for s in drawing.shapes if isinstance(s, Polygon)]) == 3
    assert "claw horn" not in words_of(kinds(KINDS_ONE, 86))


def test_few_years_have_their_numbers_and_no_line_through_them():
    drawing = kinds(KINDS, 86)
    bold = [s.words for s in drawing.shapes if isinstance(s, Text) and s.bold]
    assert sorted(bold) == ["12", "22", "24", "26", "31"]
    assert joined(drawing) == []


def test_many_years_are_joined_whole_and_broken_and_have_no_numbers():
    drawing = kinds(KINDS_TEN, 86)
    whole, broken = joined(drawing)
    assert (whole.pen.dashes, bool(broken.pen.dashes)) == ((), True)
    assert not [s for s in drawing.shapes if isinstance(s, Text) and s.bold]


def test_the_last_year_is_always_named():
    assert "2026" in words_of(kinds(KINDS_TEN, 86))


def test_a_zero_is_written_over_the_ground_line():
    drawing = kinds(KINDS_ONE, 86)
    (number,) = [s for s in drawing.shapes if isinstance(s, Text) and s.bold]
    (dot,) = [s for s in drawing.shapes if isinstance(s, Circle) and s.centre[0] > 10]
    assert number.words == "0"
    assert number.at[1] < dot.centre[1]


def test_an_endless_interval_ends_in_an_arrow_and_does_not_flatten_the_rest():
    year = KindYear("2023", Reading(20, 1, 900), None)
    drawing = kinds(replace(KINDS, years=(year, *KINDS.years)), 86)
    assert "100" in words_of(drawing)
    assert "1,000" not in words_of(drawing)


def test_without_a_year_there_is_nothing_to_draw():
    with pytest.raises(ValueError, match="no year"):
        kinds(NOTHING[1], 86)

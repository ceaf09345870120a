import pytest

from tests.visits.documents.herd_pictures import HEAT, HEAT_FULL, HEAT_HIND, NOTHING
from trimops.paper.colours import Tint
from trimops.paper.drawing import Polygon, Text
from visits.documents.herd.sole_heat import sole_heat
from visits.documents.herd_story_content import SoleHeat, ZoneCount
from visits.domain.feet import Claw, Foot


def numbers_of(drawing):
    return {s.words: s for s in drawing.shapes if isinstance(s, Text) and s.bold and s.words.isdigit()}


def words_of(drawing):
    return [shape.words for shape in drawing.shapes if isinstance(shape, Text)]


def test_every_number_stands_on_its_foot_and_claw():
    numbers = numbers_of(sole_heat(HEAT, 86))
    assert set(numbers) == {"14", "20", "1", "11", "6"}
    middle_of_left, middle_of_right = 20.5, 65.5
    assert middle_of_left < numbers["14"].at[0] < 43, "outer claw of the left hind foot: on the right"
    assert 43 < numbers["20"].at[0] < middle_of_right, "outer claw of the right hind foot: on the left"
    assert numbers["1"].at[0] > middle_of_right, "its inner claw"
    assert numbers["11"].at[0] == pytest.approx(middle_of_right), "the skin, in the middle"
    assert numbers["6"].at[0] < middle_of_left, "inner claw of the left fore foot: on the left"
    assert numbers["6"].at[1] > numbers["11"].at[1], "fore feet below hind feet"


def test_the_darkest_place_is_solid_ink_with_its_number_in_paper():
    numbers = numbers_of(sole_heat(HEAT, 86))
    assert numbers["20"].tint is Tint.PAPER
    assert {numbers[few].tint for few in ("1", "6", "11", "14")} == {Tint.INK}


def test_fore_feet_without_a_case_are_told_in_words():
    drawing = sole_heat(HEAT_HIND, 86)
    assert "left fore" not in words_of(drawing)
    assert "No place marked on a fore foot." in words_of(drawing)
    assert drawing.height < sole_heat(HEAT, 86).height


def test_cases_without_a_place_are_told_not_drawn():
    drawing = sole_heat(HEAT, 86)
    assert "Not drawn: 12 cases without a place." in words_of(drawing)
    assert "12" not in numbers_of(drawing)


def test_the_skin_belongs_to_no_claw_whatever_was_written():
    counts = tuple(ZoneCount(Foot.LEFT_HIND, claw, 10, 2) for claw in Claw)
    assert set(numbers_of(sole_heat(SoleHeat(counts), 86))) == {"6"}


def test_the_same_place_told_twice_is_summed():
    counts = (ZoneCount(Foot.LEFT_HIND, Claw.LATERAL, 4, 3), ZoneCount(Foot.LEFT_HIND, Claw.LATERAL, 4, 5))
    assert "left hind, outer claw, where sole meets heel: 8" in sole_heat(SoleHeat(counts), 86).description


def test_numbers_of_three_digits_keep_to_their_cells():
    drawing = sole_heat(HEAT_FULL, 86)
    chips = [s.points for s in drawing.shapes if isinstance(s, Polygon) and s.pen is None]
    assert max(corners[1][0] - corners[0][0] for corners in chips) < 7.2


def test_when_no_case_has_a_place_there_is_nothing_to_draw():
    with pytest.raises(ValueError, match="no case"):
        sole_heat(NOTHING[2], 86)

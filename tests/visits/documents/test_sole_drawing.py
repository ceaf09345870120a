from dataclasses import replace

import pytest

from tests.visits.documents.drawing_checks import stray_shapes
from trimops.paper.colours import Tint
from trimops.paper.drawing import Circle, Curve, Line, Polygon, Text
from visits.documents.sole_drawing import SoleMark, SoleView, small_sole_drawing, sole_drawing
from visits.domain.feet import Claw, Foot


def words_of(drawing):
    return {shape.words: shape for shape in drawing.shapes if isinstance(shape, Text)}


def dots_of(drawing):
    return [shape.centre for shape in drawing.shapes if isinstance(shape, Circle) and shape.fill is Tint.INK]


@pytest.mark.parametrize(
    ("foot", "outer_is_left"),
    [(Foot.RIGHT_HIND, True), (Foot.RIGHT_FORE, True), (Foot.LEFT_HIND, False), (Foot.LEFT_FORE, False)],
)
def test_the_outer_claw_is_on_its_side_seen_from_below(foot, outer_is_left):
    drawing = sole_drawing(SoleView(foot), 80)
    words = words_of(drawing)
    assert (words["outer"].at[0] < 40 < words["inner"].at[0]) is outer_is_left


@pytest.mark.parametrize("claw", [Claw.LATERAL, Claw.MEDIAL])
def test_left_and_right_are_mirror_images(claw):
    marks = (SoleMark(claw, 4),)
    right, left = (sole_drawing(SoleView(foot, marks), 80) for foot in (Foot.RIGHT_HIND, Foot.LEFT_HIND))
    (x_right, y_right), (x_left, y_left) = dots_of(right)[0], dots_of(left)[0]
    assert x_right == pytest.approx(80 - x_left)
    assert y_right == y_left


def test_all_numbers_are_drawn_on_both_claws_and_those_of_the_skin_once():
    drawn = [
        shape.words for shape in sole_drawing(SoleView(Foot.LEFT_HIND)).shapes if isinstance(shape, Text)
    ]
    counts = {number: drawn.count(str(number)) for number in range(13)}
    assert counts == {number: 1 if number in (0, 9, 10) else 2 for number in range(13)}


def test_a_mark_for_the_vet_is_another_shape_not_only_another_colour():
    seen, vet = (
        sole_drawing(SoleView(Foot.LEFT_HIND, (SoleMark(Claw.LATERAL, 3, is_vet),)))
        for is_vet in (False, True)
    )
    assert len(dots_of(seen)) == 1
    assert len(dots_of(vet)) == 0
    assert [len(s.points) for s in vet.shapes if isinstance(s, Polygon) and s.fill is Tint.URGENT] == [4]


def test_a_block_is_hatched_on_its_claw_and_named():
    drawing = sole_drawing(SoleView(Foot.RIGHT_HIND, (), Claw.MEDIAL), 80)
    hatching = [shape for shape in drawing.shapes if isinstance(shape, Line)]
    assert hatching
    assert all(x > 40 for line in hatching for x, _ in line.points)
    assert "block" in words_of(drawing)
    assert "block on the inner claw" in drawing.description


def test_a_place_that_was_not_noted_is_marked_in_the_middle_of_the_claw():
    assert len(dots_of(small_sole_drawing(SoleView(Foot.LEFT_HIND, (SoleMark(Claw.LATERAL),))))) == 1
    assert len(dots_of(small_sole_drawing(SoleView(Foot.LEFT_HIND, (SoleMark(Claw.SKIN),))))) == 1


@pytest.mark.parametrize("zone", range(13))
@pytest.mark.parametrize("draw", [sole_drawing, small_sole_drawing])
def test_every_mark_lies_within_its_drawing(draw, zone):
    drawing = draw(SoleView(Foot.LEFT_HIND, (SoleMark(Claw.LATERAL, zone),)))
    x, y = dots_of(drawing)[0]
    assert 0 < x < drawing.width
    assert 0 < y < drawing.height


@pytest.mark.parametrize("draw", [sole_drawing, small_sole_drawing])
def test_one_line_weight_for_the_whole_foot(draw):
    curves = [
        shape
        for shape in draw(SoleView(Foot.LEFT_HIND, (), Claw.LATERAL)).shapes
        if isinstance(shape, Curve | Line)
    ]
    assert len({curve.pen.width for curve in curves}) == 1


def test_who_cannot_see_it_is_told_what_is_marked():
    view = SoleView(Foot.RIGHT_HIND, (SoleMark(Claw.LATERAL, 4), SoleMark(Claw.SKIN, 10, True)))
    drawing = small_sole_drawing(view)
    assert drawing.title == "Sole of the right hind foot, seen from below, toes up"
    assert drawing.description == "outer claw, zone 4; skin, zone 10 (for the vet)"


def test_a_foot_that_is_the_vet_s_as_a_whole_bears_a_diamond_beside_it_unless_a_mark_does():
    plain, for_vet = SoleView(Foot.LEFT_HIND), SoleView(Foot.LEFT_HIND, for_vet=True)
    marked = SoleView(Foot.LEFT_HIND, (SoleMark(Claw.LATERAL, 4, True),))
    drawing = small_sole_drawing(for_vet)
    assert len(drawing.shapes) == len(small_sole_drawing(plain).shapes) + 1
    assert drawing.description == "for the vet"
    assert stray_shapes(drawing) == []
    assert small_sole_drawing(replace(marked, for_vet=True)).shapes == small_sole_drawing(marked).shapes

import pytest

from trimops.paper.colours import Tint
from trimops.paper.drawing import Circle, Line, Polygon
from trimops.paper.typefaces import BODY, width_of
from visits.documents.herd.axis import Scale
from visits.documents.herd.marks import WORDS, centred, centred_within, lying, mark, standing
from visits.documents.herd_story_content import Reading

UP = Scale(0, 50, 40, 0)
ALONG = Scale(0, 50, 10, 60)


def lines_of(shapes):
    return [shape.points for shape in shapes if isinstance(shape, Line)]


def test_the_four_marks_differ_in_shape_or_filling():
    looks = {(type(m), m.fill, len(getattr(m, "points", ())), getattr(m, "points", ((0, 0), (0, 0)))[0][0] == 5)
             for m in (mark(kind, (5, 5)) for kind in ("dot", "ring", "square", "diamond"))}  # fmt: skip
    assert len(looks) == 4
    assert isinstance(mark("ring", (5, 5)), Circle)
    assert isinstance(mark("diamond", (5, 5)), Polygon)
    assert mark("ring", (5, 5)).fill is Tint.PAPER


def test_an_interval_stands_upright_through_its_figure():
    shapes = standing("dot", 7, UP, Reading(20, 10, 35))
    assert lines_of(shapes) == [((7, 32), (7, 12))]
    assert shapes[-1].centre == (7, 24)


def test_an_interval_lies_through_its_figure():
    shapes = lying("dot", 7, ALONG, Reading(20, 10, 35))
    assert lines_of(shapes) == [((20, 7), (45, 7))]
    assert shapes[-1].centre == (30, 7)


@pytest.mark.parametrize("draw", [standing, lying])
def test_an_interval_that_goes_on_ends_in_an_arrow(draw):
    scale = UP if draw is standing else ALONG
    shapes = draw("dot", 7, scale, Reading(20, 10, 90))
    whole, *arrow = lines_of(shapes)
    assert len(arrow) == 2
    assert all(part[1] == whole[1] for part in arrow)
    assert len(lines_of(draw("dot", 7, scale, Reading(20, 10, 50)))) == 1


def test_a_figure_without_an_interval_is_a_mark_alone():
    assert len(lying("diamond", 7, ALONG, Reading(14))) == 1


def test_picked_cows_have_a_broken_line():
    assert standing("ring", 7, UP, Reading(20, 10, 35))[0].pen.dashes
    assert not standing("dot", 7, UP, Reading(20, 10, 35))[0].pen.dashes


def test_words_at_an_edge_are_moved_in_and_no_further():
    half = width_of("Mar 2026", BODY, WORDS) / 2
    assert centred_within((1, 5), "Mar 2026", 86).at == (pytest.approx(half), 5)
    assert centred_within((85, 5), "Mar 2026", 86).at == (pytest.approx(86 - half), 5)
    assert centred_within((40, 5), "Mar 2026", 86) == centred((40, 5), "Mar 2026")

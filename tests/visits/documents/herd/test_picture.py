"""What holds for all six herd pictures."""

import pytest

from tests.visits.documents import herd_pictures
from tests.visits.documents.drawing_checks import clashing_words, stray_shapes
from trimops.paper.colours import Tint
from trimops.paper.drawing import Circle, Curve, Polygon, Text
from trimops.paper.to_svg import to_svg
from visits.documents.herd.picture import WIDTH, draw

_PHONE = 360 - 2 * 16


@pytest.mark.parametrize("content", herd_pictures.SOMETHING)
@pytest.mark.parametrize("width", [80.0, WIDTH, 101.0])
def test_nothing_runs_off_the_sheet_and_no_words_lie_over_each_other(content, width):
    drawing = draw(content, width)
    assert stray_shapes(drawing, 0.4) == []
    assert clashing_words(drawing) == []


@pytest.mark.parametrize("content", herd_pictures.NOTHING)
def test_a_content_that_rests_on_nothing_makes_no_picture(content):
    assert draw(content) is None


@pytest.mark.parametrize("content", herd_pictures.SOMETHING)
def test_words_are_fifteen_pixels_on_a_phone_but_for_numbers_of_three_digits_on_the_sole(content):
    sizes = {
        shape.size
        for shape in draw(content).shapes
        if isinstance(shape, Text) and not (shape.words.isdigit() and len(shape.words) > 2 and shape.bold)
    }
    assert min(sizes) * _PHONE / WIDTH >= 15


@pytest.mark.parametrize("content", herd_pictures.SOMETHING)
def test_fills_are_ink_and_paper_so_that_a_photocopy_tells_the_same(content):
    """The signs of a change have their own shapes; no other mark has a colour at all."""
    fills = {
        shape.fill
        for shape in draw(content).shapes
        if isinstance(shape, Polygon | Circle | Curve) and shape.fill
    }
    assert fills <= {Tint.INK, Tint.PAPER, Tint.GROUND}


@pytest.mark.parametrize("content", herd_pictures.SOMETHING)
def test_who_cannot_see_it_is_told_the_figures(content):
    drawing = draw(content)
    assert drawing.title
    assert any(letter.isdigit() for letter in drawing.description)
    assert drawing.description.split(";")[0].replace("&", "&amp;") in to_svg(drawing)

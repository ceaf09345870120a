"""Days of cover as a bar."""

import pytest

from tests.visits.documents.drawing_checks import stray_shapes
from trimops.paper.colours import Tint
from trimops.paper.drawing import Line, Polygon
from visits.documents.kit.cover_bars import Cover, cover_bar


def bar_of(cover):
    """How far the bar reaches, as a share of the weeks shown."""
    drawing = cover_bar(cover, "words", 58.6)
    solid = [s for s in drawing.shapes if isinstance(s, Polygon) and len(s.points) == 4]
    return (max(x for shape in solid for x, _ in shape.points) - 1) / 56 if solid else 0.0


@pytest.mark.parametrize(
    ("lasts", "share"), [(14, 0.5), (28, 1.0), (40, 1.0), (None, 1.0), (0, 0.0), (-3, 0.0)]
)
def test_it_is_as_long_as_the_stock_lasts(lasts, share):
    assert bar_of(Cover(lasts, 5)) == pytest.approx(share)


def test_one_that_ends_before_an_order_could_be_here_is_hatched():
    late, timely = Cover(3, 5), Cover(9, 5)
    assert (late.comes_late, timely.comes_late, Cover(None, 5).comes_late) == (True, False, False)
    hatched = [
        [s for s in cover_bar(cover, "words").shapes if isinstance(s, Line) and s.pen.tint is Tint.DUE]
        for cover in (late, timely)
    ]
    assert len(hatched[0]) > 3
    assert hatched[1] == []


@pytest.mark.parametrize("cover", [Cover(3, 5), Cover(None, 60), Cover(0, 0), Cover(60, 28)])
def test_it_keeps_within_its_sheet_and_says_its_words(cover):
    drawing = cover_bar(cover, "Lasts until Friday")
    assert stray_shapes(drawing) == []
    assert drawing.title == "Lasts until Friday"

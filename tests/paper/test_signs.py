import pytest

from trimops.paper.colours import Meaning
from trimops.paper.drawing import Circle, Polygon
from trimops.paper.signs import sign, sign_drawing


def outline(meaning):
    """What is left of a sign when its colours are taken away."""
    return [
        (type(s).__name__, len(getattr(s, "points", ())), getattr(s, "pen", None) is None)
        for s in sign(meaning, (0, 0), 4)
    ]


def test_signs_are_told_apart_without_colour():
    outlines = [str(outline(meaning)) for meaning in Meaning]
    assert len(set(outlines)) == len(outlines)


@pytest.mark.parametrize("meaning", list(Meaning))
def test_a_sign_keeps_within_its_size(meaning):
    for shape in sign(meaning, (5, 5), 4):
        points = (
            shape.points if not isinstance(shape, Circle) else ((5 - shape.radius, 5), (5, 5 + shape.radius))
        )
        assert all(3 <= value <= 7 for point in points for value in point)


def test_urgent_is_the_only_filled_sign():
    filled = [m for m in Meaning if any(isinstance(s, Polygon) and s.pen is None for s in sign(m, (0, 0), 4))]
    assert filled == [Meaning.URGENT]


def test_a_sign_as_a_drawing_is_named_by_its_word():
    assert sign_drawing(Meaning.DUE).title == "due"

"""The four signs: each meaning has a shape of its own, so that it is told apart without colour.

done: a ring with a tick · due: a triangle · urgent (also: for the vet): a filled diamond · planned: a hollow square
"""

from trimops.paper.colours import Meaning, Tint, tint_of
from trimops.paper.drawing import Circle, Drawing, Line, Pen, Point, Polygon, Shape, box


def sign(meaning: Meaning, centre: Point, size: float) -> tuple[Shape, ...]:
    """The shapes of a meaning's sign, `size` mm across, about `centre`."""
    tint = tint_of(meaning)
    pen = Pen(tint, size * 0.12)
    x, y = centre
    half = size / 2
    if meaning is Meaning.DONE:
        tick = ((x - half * 0.45, y), (x - half * 0.1, y + half * 0.4), (x + half * 0.5, y - half * 0.35))
        return Circle(centre, half * 0.92, Tint.PAPER, pen), Line(tick, pen)
    if meaning is Meaning.DUE:
        corners = ((x, y - half), (x + half, y + half * 0.8), (x - half, y + half * 0.8))
        return (Polygon(corners, Tint.PAPER, pen),)
    if meaning is Meaning.URGENT:
        return (Polygon(((x, y - half), (x + half, y), (x, y + half), (x - half, y)), tint, None),)
    inner = half * 0.85
    return (Polygon(box(x - inner, y - inner, x + inner, y + inner), Tint.PAPER, pen),)


def sign_drawing(meaning: Meaning, size: float = 4.0) -> Drawing:
    """A sign as a small drawing of its own."""
    margin = size * 0.1
    across = size + 2 * margin
    return Drawing(across, across, sign(meaning, (across / 2, across / 2), size), title=meaning.value)

import pytest

from trimops.paper.drawing import Circle, Curve, Line, Polygon, Text
from trimops.paper.moving import Move, corners_of

MIRROR = Move(across=-2, down=2, right=10, below=1)


def test_points_are_scaled_mirrored_and_shifted():
    assert MIRROR.point((3, 4)) == (4, 9)
    assert MIRROR.shape(Line(((0, 0), (1, 1)))).points == ((10, 1), (8, 3))
    assert MIRROR.shape(Polygon(((0, 0),))).points == ((10, 1),)


def test_sizes_grow_but_are_never_turned_inside_out():
    assert MIRROR.shape(Circle((1, 1), 3)).radius == 6
    assert MIRROR.shape(Text((1, 1), "toe", 2, anchor="end")) == Text((8, 3), "toe", 4, anchor="end")


def test_a_curve_keeps_its_pieces():
    moved = MIRROR.shape(Curve((0, 0), (((1, 0), (2, 0), (3, 0)),)))
    assert (moved.start, moved.pieces) == ((10, 1), (((8, 1), (6, 1), (4, 1)),))


def test_corners_of_a_straight_curve_lie_on_its_line():
    corners = corners_of(Curve((0, 0), (((1, 1), (2, 2), (3, 3)),)), steps=3)
    assert corners[0] == (0, 0)
    assert corners[-1] == pytest.approx((3, 3))
    assert all(x == pytest.approx(y) for x, y in corners)

"""Scaling, mirroring and shifting shapes, so that a thing is drawn once and placed where it is wanted."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import singledispatchmethod

from trimops.paper.drawing import Circle, Curve, Line, Point, Polygon, Shape, Text


@dataclass(frozen=True)
class Move:
    """x -> x * across + right, y -> y * down + below. Pens keep their width; words are moved, never mirrored."""

    across: float = 1.0
    down: float = 1.0
    right: float = 0.0
    below: float = 0.0

    def point(self, point: Point) -> Point:
        return point[0] * self.across + self.right, point[1] * self.down + self.below

    def points(self, points: Iterable[Point]) -> tuple[Point, ...]:
        return tuple(self.point(point) for point in points)

    @singledispatchmethod
    def shape(self, shape: Shape) -> Shape:
        raise TypeError(f"no way to move {type(shape).__name__}")

    @shape.register
    def _(self, shape: Line) -> Shape:
        return replace(shape, points=self.points(shape.points))

    @shape.register
    def _(self, shape: Polygon) -> Shape:
        return replace(shape, points=self.points(shape.points))

    @shape.register
    def _(self, shape: Circle) -> Shape:
        return replace(shape, centre=self.point(shape.centre), radius=shape.radius * abs(self.down))

    @shape.register
    def _(self, shape: Curve) -> Shape:
        moved = tuple((self.point(a), self.point(b), self.point(c)) for a, b, c in shape.pieces)
        return replace(shape, start=self.point(shape.start), pieces=moved)

    @shape.register
    def _(self, shape: Text) -> Shape:
        return replace(shape, at=self.point(shape.at), size=shape.size * abs(self.down))


def corners_of(curve: Curve, steps: int = 12) -> tuple[Point, ...]:
    """Points along a curve, `steps` to each of its pieces."""
    points, here = [curve.start], curve.start
    for first, second, end in curve.pieces:
        points += [_on_piece((here, first, second, end), i / steps) for i in range(1, steps + 1)]
        here = end
    return tuple(points)


def _on_piece(handles: tuple[Point, Point, Point, Point], at: float) -> Point:
    weights = ((1 - at) ** 3, 3 * at * (1 - at) ** 2, 3 * at**2 * (1 - at), at**3)
    x = sum(weight * point[0] for weight, point in zip(weights, handles, strict=True))
    y = sum(weight * point[1] for weight, point in zip(weights, handles, strict=True))
    return x, y

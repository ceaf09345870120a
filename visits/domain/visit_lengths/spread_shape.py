"""The shape of a spread: how errors, counted in standard deviations, really lie about 0."""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from statistics import NormalDist

NORMAL = NormalDist()
STEPS = 21
USUAL_ERRORS = 24
"""So many errors of a normal curve are mixed with those that were seen: few seen ones do not draw a shape."""


@dataclass(frozen=True)
class SpreadShape:
    """Errors in standard deviations at the middles of equal shares, rising; past the ends it goes on as a normal curve.

    `error_at` leads from a normal score to the error, `score_of` back: visits of a day can then be drawn together.
    ValueError for fewer than two values or where they do not rise.
    """

    errors: tuple[float, ...]

    def __post_init__(self) -> None:
        if len(self.errors) < 2 or any(b <= a for a, b in zip(self.errors, self.errors[1:], strict=False)):
            raise ValueError("the errors of a shape must be two or more and must rise")

    def error_at(self, score: float) -> float:
        """The error, in standard deviations, that stands where `score` stands on a normal curve."""
        return _between(_scores(len(self.errors)), self.errors, score)

    def score_of(self, error: float) -> float:
        """The normal score at which that error stands; the inverse of `error_at`."""
        return _between(self.errors, _scores(len(self.errors)), error)

    def error_below(self, share: float) -> float:
        """The error below which `share` of all lie; 0 < share < 1."""
        return self.error_at(NORMAL.inv_cdf(share))


def normal_shape() -> SpreadShape:
    """The shape where nothing was seen yet."""
    return SpreadShape(_scores(STEPS))


def shape_of(seen: Sequence[float]) -> SpreadShape:
    """The shape of errors that were seen, mixed with a few of the normal curve."""
    pool = sorted([*seen, *_scores(USUAL_ERRORS)])
    errors = [quantile(pool, (step + 0.5) / STEPS) for step in range(STEPS)]
    for at in range(1, STEPS):
        errors[at] = max(errors[at], errors[at - 1] + 1e-4)
    return SpreadShape(tuple(errors))


def quantile(ordered: Sequence[float], share: float) -> float:
    """The value of a rising sequence below which `share` lies (middles of equal shares, straight lines between).

    Hazen 1914 (from memory); `method="hazen"` of numpy. ValueError when there are none.
    """
    if not ordered:
        raise ValueError("no values")
    place = min(max(share * len(ordered) - 0.5, 0.0), len(ordered) - 1.0)
    low = int(place)
    high = min(low + 1, len(ordered) - 1)
    return ordered[low] + (ordered[high] - ordered[low]) * (place - low)


@cache
def _scores(count: int) -> tuple[float, ...]:
    return tuple(NORMAL.inv_cdf((at + 0.5) / count) for at in range(count))


def _between(xs: Sequence[float], ys: Sequence[float], x: float) -> float:
    """Straight lines through the points, beyond the ends with slope 1."""
    if x <= xs[0]:
        return ys[0] + (x - xs[0])
    if x >= xs[-1]:
        return ys[-1] + (x - xs[-1])
    at = bisect_right(xs, x)
    share = (x - xs[at - 1]) / (xs[at] - xs[at - 1])
    return ys[at - 1] + share * (ys[at] - ys[at - 1])


NORMAL_SHAPE = normal_shape()

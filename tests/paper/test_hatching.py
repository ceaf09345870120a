import pytest

from trimops.paper.drawing import Pen, box
from trimops.paper.hatching import hatch

PEN = Pen()


def test_lines_stay_within_the_shape():
    for line in hatch(box(2, 3, 12, 8), 1.0, PEN):
        assert all(2 - 1e-3 <= x <= 12 + 1e-3 and 3 - 1e-3 <= y <= 8 + 1e-3 for x, y in line.points)


def test_their_number_follows_from_their_spacing():
    # A square of side 10 is 14.14 across its diagonal.
    assert len(hatch(box(0, 0, 10, 10), 1.0, PEN)) == pytest.approx(14, abs=1)


def test_a_hollow_is_left_empty():
    hollow = ((0, 0), (4, 0), (4, 6), (6, 6), (6, 0), (10, 0), (10, 10), (0, 10))
    middles = [
        ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for line in hatch(hollow, 0.7, PEN) for a, b in [line.points]
    ]
    assert not [(x, y) for x, y in middles if 4.01 < x < 5.99 and y < 5.99]

from itertools import pairwise

import pytest

from trimops.paper.colours import Tint
from trimops.paper.drawing import Line, box
from visits.documents.herd.shades import DARKEST, shade_of, shade_ranges, shaded


@pytest.mark.parametrize(
    ("highest", "expected"),
    [(1, {1: 1}), (4, {1: 1, 2: 2, 3: 3, 4: 4}), (20, {1: 1, 5: 1, 6: 2, 15: 3, 16: 4})],
)
def test_shades_are_quarters_of_the_highest_and_never_darker_than_the_count(highest, expected):
    assert {count: shade_of(count, highest) for count in expected} == expected
    assert shade_of(0, highest) == 0


@pytest.mark.parametrize("highest", [1, 2, 5, 7, 20, 999])
def test_the_key_names_every_count_once(highest):
    named = [count for _, least, most in shade_ranges(highest) for count in range(least, most + 1)]
    assert named == list(range(1, highest + 1))
    assert all(shade_of(count, highest) == shade for shade, *ends in shade_ranges(highest) for count in ends)


def test_more_ink_lies_on_every_darker_shade():
    def ink(shade):
        lines = [s for s in shaded(box(0, 0, 7, 7), shade) if isinstance(s, Line)]
        return sum(line.pen.width * abs(line.points[1][0] - line.points[0][0]) * 2**0.5 for line in lines)

    shares = [ink(shade) / 49 for shade in range(DARKEST)]
    assert shares[0] == 0
    assert all(darker - lighter > 0.08 for lighter, darker in pairwise(shares))
    assert shares[-1] < 0.85
    assert shaded(box(0, 0, 7, 7), DARKEST)[0].fill is Tint.INK

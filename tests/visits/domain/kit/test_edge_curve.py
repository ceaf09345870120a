import pytest

from tests.visits.domain.kit.some_edges import edges
from visits.domain.herd.survival_curve import Median
from visits.domain.kit.blade_kinds import SharpenMethod
from visits.domain.kit.edge_curve import edge_curve, edge_curves, is_enough, told_apart
from visits.domain.kit.edge_lives import Edge, EdgeEnd


def test_the_curve_falls_where_edges_went_dull():
    curve = edge_curve(edges("10 20+ 30 40"))
    assert [(step.day, step.survival) for step in curve.steps] == [
        (10, pytest.approx(3 / 4)),
        (30, pytest.approx(3 / 8)),
        (40, 0),
    ]
    assert curve.median.day == 30


def test_an_edge_that_tells_nothing_is_left_out():
    silent = Edge(1, "hoof_knife", None, True, is_whole=False, begun_at=None, end=EdgeEnd.WENT_DULL, cows=9)
    assert edge_curve([silent]).durations == ()
    assert edge_curves([silent], lambda edge: edge.blade) == {}


def test_there_is_a_curve_for_each_group_the_largest_first():
    stone = edges("10 12", SharpenMethod.STONE)
    curves = edge_curves([*stone, *edges("30 32 34+")], lambda edge: edge.method)
    assert list(curves) == [SharpenMethod.BELT, SharpenMethod.STONE]
    assert curves[SharpenMethod.STONE].durations == (10, 12)


def test_eight_dull_edges_are_enough_for_a_finding():
    assert not is_enough(edge_curve(edges("1 2 3 4 5 6 7 8+ 9+")))
    assert is_enough(edge_curve(edges("1 2 3 4 5 6 7 8")))


@pytest.mark.parametrize(
    ("one", "other", "apart"),
    [
        (Median(20, 18, 24), Median(30, 26, 35), True),
        (Median(30, 26, 35), Median(20, 18, 24), True),
        (Median(20, 18, 27), Median(30, 26, 35), False),
        (Median(20, 18, None), Median(30, 26, 35), False),
    ],
)
def test_two_medians_are_apart_when_their_intervals_leave_a_gap(one, other, apart):
    assert told_apart(one, other) is apart

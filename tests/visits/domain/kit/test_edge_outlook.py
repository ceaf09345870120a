import pytest

from visits.domain.kit.edge_life import EdgeLife
from visits.domain.kit.edge_outlook import EdgeOutlook, edge_outlook

LIFE = EdgeLife((1.0, 1.0, 0.95, 0.8, 0.5, 0.3, 0.08), 20)


def test_what_is_left_is_told_with_the_interval_around_it():
    assert edge_outlook(LIFE, 0, 0.2) == EdgeOutlook(0, sure=3, low=2, middle=4, high=5)


def test_a_worn_edge_has_less_left_than_a_new_one():
    assert edge_outlook(LIFE, 3, 0.2) == EdgeOutlook(3, sure=0, low=0, middle=1, high=3)


def test_a_dull_edge_has_nothing_left():
    assert edge_outlook(LIFE, 2, 0.2, is_dull=True) == EdgeOutlook(2, 0, 0, 0, 0, is_dull=True)


@pytest.mark.parametrize(("cows", "is_beyond"), [(5, False), (6, True), (40, True)])
def test_past_what_any_edge_cut_nothing_can_be_told(cows, is_beyond):
    found = edge_outlook(LIFE, cows, 0.2)
    assert (found.is_beyond, found.high == 0) == (is_beyond, is_beyond)

"""Held against the best known worked example of shrinkage: the batting averages of 18 players over 45 turns each.

Source: B. Efron and C. Morris 1977, "Stein's paradox in statistics", Scientific American 236 (5), and 1975 in the
Journal of the American Statistical Association 70: the shrinking factor is 0.212, the first average of 0.400
becomes 0.294 (from memory).
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.visit_lengths.shrunk_shares import shrink_shares

HITS = (18, 17, 16, 15, 14, 14, 13, 12, 11, 11, 10, 10, 10, 10, 10, 9, 8, 7)
TURNS = (45,) * 18


def test_the_published_example_comes_out_as_published():
    found = shrink_shares(HITS, TURNS, usual=0.3, worth=0)
    assert found.overall == pytest.approx(0.265, abs=0.0005)
    assert (found.shares[0] - found.overall) / (18 / 45 - found.overall) == pytest.approx(0.212, abs=0.0005)
    assert found.shares[0] == pytest.approx(0.294, abs=0.0005)


shares = st.lists(st.tuples(st.integers(0, 40), st.integers(0, 40)), min_size=1, max_size=20)


@given(counted=shares, usual=st.floats(0, 1), worth=st.floats(1, 50))
def test_a_shrunk_share_lies_between_its_own_and_that_of_all(counted, usual, worth):
    hits, trials = [h for h, _ in counted], [h + m for h, m in counted]
    found = shrink_shares(hits, trials, usual=usual, worth=worth)
    assert 0 <= found.overall <= 1
    for share, hit, trial in zip(found.shares, hits, trials, strict=True):
        own = hit / trial if trial else found.overall
        assert min(own, found.overall) - 1e-9 <= share <= max(own, found.overall) + 1e-9


@given(counted=shares, share=st.floats(0, 1), trials=st.integers(1, 200), more=st.integers(1, 200))
def test_a_group_seen_more_is_drawn_in_less(counted, share, trials, more):
    found = shrink_shares([h for h, _ in counted], [h + m for h, m in counted], usual=0.3, worth=5)
    few, many = (abs(found.share_of(share * n, n) - found.overall) for n in (trials, trials + more))
    assert few <= many + 1e-9


def test_without_a_single_trial_the_usual_share_stands():
    found = shrink_shares([], [], usual=0.2, worth=0)
    assert found.overall == found.share_of(0, 0) == 0.2


def test_three_groups_are_too_few_to_say_how_groups_differ():
    assert shrink_shares([0, 20, 40], [40, 40, 40], usual=0.5, worth=0).between == 0

"""Counts stay true."""

from decimal import Decimal

import pytest

from visits.domain.kit.count_gaps import count_gaps


@pytest.mark.parametrize(
    ("counted", "gaps"),
    [
        ([], []),
        ([(40, 40)], [0]),
        ([(38, 40)], [-2]),
        # Both counts were right until a use of 5 was heard of that lies before them: it is made good once.
        ([(38, 33), (30, 25)], [5, 0]),
        # It lies between them.
        ([(38, 38), (30, 25)], [0, 5]),
        ([(0, -3), (10, 0)], [3, 7]),
    ],
)
def test_what_is_added_at_a_count_is_there_at_those_that_follow(counted, gaps):
    assert count_gaps((Decimal(said), Decimal(balance)) for said, balance in counted) == gaps

"""The bench in a small form."""

from datetime import date

import pytest

from tests.bench.visits.bench_herd_page import MOST_QUERIES, measure
from tests.bench.visits.large_herd import Wanted, large_herd

SMALL = Wanted(cows=6, years=1, today=date(2026, 3, 31))


@pytest.mark.django_db
def test_a_herd_with_every_kind_of_row_is_shown_within_the_bar():
    found = measure(large_herd(SMALL), SMALL.today)
    assert found.queries <= MOST_QUERIES
    assert found.trims == 18
    assert found.feet >= 2 * found.trims

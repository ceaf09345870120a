"""The bench in a small form; nothing is timed."""

import pytest

from tests.bench.visits.bench_kit_forecast_time import MOST_QUERIES, measure
from tests.bench.visits.large_kit import CHANCES, LargeKit, large_kit

SMALL = LargeKit(visits=40, cows=2)


@pytest.mark.django_db
def test_every_consumable_is_told_within_the_queries_allowed():
    found = measure(large_kit(SMALL), SMALL)
    assert found.queries <= MOST_QUERIES
    assert len(found.told) == len(CHANCES)
    assert {forecast.visits for forecast in found.told.values()} == {SMALL.visits}
    assert all(forecast.expected > 0 for forecast in found.told.values())

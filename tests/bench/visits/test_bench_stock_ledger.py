"""The bench of the stock ledger in its smallest form."""

import pytest

from tests.bench.visits.bench_stock_ledger import measure, one_long
from tests.bench.visits.large_ledger import large_ledger


def test_a_few_operations_in_one_ledger():
    done = one_long(3, 120, look_every=40)
    assert done["uses sent"] > 5
    assert done["counted"] > 1


@pytest.mark.django_db
def test_what_is_measured_takes_the_same_queries_however_long_the_ledger_is():
    made, visits = large_ledger(6)
    found = measure(made.house.scope, visits)
    assert [queries for _, queries in found.values()] == [1, 4, 6, 6, 3, 6, 6]

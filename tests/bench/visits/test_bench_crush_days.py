"""The bench of random days in its smallest form: it runs, and it counts what it ran."""

import logging

import pytest

from tests.bench.visits.bench_crush_days import run


@pytest.fixture(autouse=True)
def _quiet():
    """The failures of the server are made on purpose."""
    logging.disable(logging.CRITICAL)
    yield
    logging.disable(logging.NOTSET)


@pytest.mark.usefixtures("transactional_db")
def test_as_many_sequences_are_run_as_are_counted():
    counts = run(3)
    assert counts["sequences"] == 3
    assert counts["sendings"] >= 3

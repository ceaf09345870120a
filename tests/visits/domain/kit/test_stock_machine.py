"""Random dealings with stock, in a small form; bench_stock_ledger.py does many more, and 5,000 in one ledger."""

import os

from hypothesis import HealthCheck, Phase, settings
from hypothesis.stateful import run_state_machine_as_test

from tests.visits.domain.kit.stock_machine import StockMachine

# `TRIMOPS_STOCK_SEQUENCES=2000 pytest tests/visits/domain/kit/test_stock_machine.py` for long.
SEQUENCES = int(os.environ.get("TRIMOPS_STOCK_SEQUENCES", "30"))
STEPS = 25


def test_whatever_is_done_in_whatever_order_ledger_and_tokens_agree():
    run_state_machine_as_test(
        StockMachine,
        settings=settings(
            max_examples=SEQUENCES,
            stateful_step_count=STEPS,
            deadline=None,
            phases=[Phase.generate],
            suppress_health_check=list(HealthCheck),
        ),
    )

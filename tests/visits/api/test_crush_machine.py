"""Random days at the crush, in a small form; `make bench` runs thousands (tests/bench/visits/bench_crush_days.py)."""

import logging
import os

import pytest
from hypothesis import HealthCheck, Phase, settings
from hypothesis.stateful import run_state_machine_as_test

from tests.visits.api.crush_machine import CrushMachine, World

# `make bench` runs it with more on the servers.
SEQUENCES = int(os.environ.get("TRIMOPS_SEQUENCES", "40"))


@pytest.fixture
def _quiet():
    """The failures of the server are made on purpose."""
    logging.disable(logging.CRITICAL)
    yield
    logging.disable(logging.NOTSET)


@pytest.mark.usefixtures("_quiet", "transactional_db")
def test_whatever_happens_on_the_way_the_server_ends_where_the_merge_rule_ends():
    CrushMachine.world = World()
    run_state_machine_as_test(
        CrushMachine,
        settings=settings(
            max_examples=SEQUENCES,
            stateful_step_count=25,
            deadline=None,
            phases=[Phase.generate],
            suppress_health_check=list(HealthCheck),
        ),
    )

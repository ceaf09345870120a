"""Thousands of random days at the crush, against the real address on the embedded default.

Two phones with wrong clocks, edits, undoing, lost answers, repeats, other orders, a database that gives out on the way,
sessions that expire, bad writings in between: the server must end where the merge rule ends (tests/visits/api).
"""

import logging
import os
from collections import Counter
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context

from hypothesis import HealthCheck, Phase, settings
from hypothesis.stateful import run_state_machine_as_test

from tests.bench.embedded_site import embedded_site
from tests.visits.api.crush_machine import CrushMachine, World

SEQUENCES = 2000
STEPS = 25


def run(sequences: int) -> Counter[str]:
    """What was done over all sequences; raises where one of them ended elsewhere than the rule."""
    CrushMachine.world = World()
    CrushMachine.counts.clear()
    run_state_machine_as_test(
        CrushMachine,
        settings=settings(
            max_examples=sequences,
            stateful_step_count=STEPS,
            deadline=None,
            database=None,
            derandomize=False,
            phases=[Phase.generate, Phase.shrink],
            suppress_health_check=list(HealthCheck),
        ),
    )
    return CrushMachine.counts


def run_part(sequences: int) -> Counter[str]:
    """In a process of its own, on a database of its own."""
    logging.disable(logging.CRITICAL)
    with embedded_site():
        return Counter(run(sequences))


def main(sequences: int = SEQUENCES) -> None:
    hands = os.cpu_count() or 1
    share = -(-sequences // hands)
    with ProcessPoolExecutor(hands, mp_context=get_context("spawn")) as pool:
        counts = sum(pool.map(run_part, [share] * hands), Counter())
    for what, count in counts.most_common():
        print(f"  {count:7d} {what}")
    assert counts["sequences"] >= sequences, f"{counts['sequences']} sequences; the bar is {sequences}"
    print(f"  each sequence ended where the merge rule ends (bar: at least {sequences})")


if __name__ == "__main__":
    main()

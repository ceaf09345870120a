"""The stock ledger against tokens carried by hand, over thousands of random operations; and how long large ones take.

Bars: 5,000 operations in one ledger and more over many, uses sent late and out of order by two phones and counts dated
back among them: balances are sums, every count is true, costs are exact to the penny, no lot is below nought and what
is short is said. Times for 100,000 lines are printed, with a bar on the processor time of what pages ask for.
"""

import time
from collections import Counter
from collections.abc import Callable
from random import Random

from tests.bench.embedded_site import embedded_site  # isort: skip
from django.core.cache import caches
from django.db import connection
from django.test.utils import CaptureQueriesContext
from hypothesis import HealthCheck, Phase, settings
from hypothesis.stateful import run_state_machine_as_test

from tests.bench.visits.large_ledger import large_ledger
from tests.visits.domain.kit.stock_machine import StockMachine
from tests.visits.domain.kit.stock_world import PlainLedger, StockWorld
from trimops.kernel.scope import Scope
from visits.models import StockMovement, Visit
from visits.selectors.kit.item_ledger import item_ledger
from visits.selectors.kit.ledger_lines import movements_of
from visits.selectors.kit.lots_left import all_lots_left
from visits.selectors.kit.stock_now import stock_now
from visits.selectors.kit.visit_materials import visit_materials

SEQUENCES, STEPS = 400, 25
OPERATIONS = 5000
VISITS = 1200
MOST_WORK = {
    "what lies where": 1.0,
    "lots, the past kept": 1.0,
    "one page of a ledger": 1.0,
    "one visit's material": 0.5,
}
"""Seconds of processor time."""


def many_short(sequences: int) -> Counter[str]:
    """Sequences of 25 operations as hypothesis draws them, looked at after each."""
    StockWorld.done.clear()
    run_state_machine_as_test(
        StockMachine,
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
    return Counter(StockWorld.done)


def one_long(seed: int, operations: int, look_every: int = 500) -> Counter[str]:
    """So many operations in one ledger, looked at now and then and at the end."""
    StockWorld.done.clear()
    chance, world = Random(seed), StockWorld(PlainLedger())
    for number in range(operations):
        _any_of(chance, world)()
        if number % look_every == 0:
            world.check()
    for phone in (1, 0):
        world.deliver(phone, True, operations)
    world.check()
    return Counter(StockWorld.done)


def _any_of(chance: Random, world: StockWorld) -> Callable[[], None]:
    place, tokens, back = chance.randrange(3), chance.randint(1, 25), chance.choice([0, 0, 0, 5, 30, 90])
    pick, phone = chance.choice([None, *range(6)]), chance.randrange(2)
    acts: list[tuple[int, Callable[[], None]]] = [
        (3, lambda: world.wait(chance.choice([1, 5, 40]))),
        (
            2,
            lambda: world.buy(
                place, tokens, chance.choice([None, *[tokens * 37]] * 4), chance.choice([None, 10, 300]), back
            ),
        ),
        (2, lambda: world.move(place, (place + chance.randint(1, 2)) % 3, tokens, pick, back)),
        (1, lambda: world.write_off(place, tokens, pick, back)),
        (1, lambda: world.count(place, chance.randint(0, 25), back)),
        (4, lambda: world.jot(phone, place, chance.choice([-3, 1, 2, 4, 9, 20]), back)),
        (
            3,
            lambda: world.mend(
                phone, chance.randrange(9999), chance.choice([-2, 0, 1, 7]), chance.random() < 0.5
            ),
        ),
        (3, lambda: world.deliver(phone, chance.random() < 0.5, chance.randint(1, 9))),
    ]
    return chance.choices([act for _, act in acts], [weight for weight, _ in acts])[0]


def measure(scope: Scope, visits: list[Visit]) -> dict[str, tuple[float, int]]:
    """Seconds of processor time and queries of what pages ask for."""
    item = stock_now(scope)[0].consumable
    caches["worked_out"].clear()
    asked: dict[str, Callable[[], object]] = {
        "all lines as values": lambda: movements_of(StockMovement.objects.within(scope)),
        "what lies where": lambda: stock_now(scope),
        "lots, the past gone through": lambda: all_lots_left(scope),
        "lots, the past kept": lambda: all_lots_left(scope),
        "one page of a ledger": lambda: item_ledger(scope, item, 2),
        "one visit's material": lambda: visit_materials(scope, visits[-1:]),
        "material of 60 visits": lambda: visit_materials(scope, visits[-60:]),
    }
    found = {}
    for what, call in asked.items():
        with CaptureQueriesContext(connection) as queries:
            began = time.process_time()
            call()
            found[what] = (time.process_time() - began, len(queries))
    return found


def main() -> None:
    with embedded_site():
        made, visits = large_ledger(VISITS)
        lines = StockMovement.objects.within(made.house.scope).count()
        print(f"  a ledger of {lines:,} lines, {VISITS} visits, 12 things:")
        for what, (work, queries) in measure(made.house.scope, visits).items():
            print(f"  {work:7.3f} s of processor time, {queries} queries: {what}")
            assert work <= MOST_WORK.get(what, 60), f"{what}: {work:.2f} s; the bar is {MOST_WORK[what]} s"
    done = many_short(SEQUENCES)
    print(
        f"  {SEQUENCES * STEPS:,} operations in {SEQUENCES} ledgers agree with the tokens: {dict(done.most_common())}"
    )
    for seed in (1, 2):
        done = one_long(seed, OPERATIONS)
        print(f"  {OPERATIONS:,} operations in one ledger agree with the tokens: {dict(done.most_common())}")


if __name__ == "__main__":
    main()

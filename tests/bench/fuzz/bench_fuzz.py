"""Ten thousand spoilt files and every bomb, through every way by which a file comes in.

The bar: each is read or refused by name, in less than 5 seconds of a processor, and this process never needs
300 MB more than when it began. That a refused file changes nothing: tests/fuzz/test_nothing_is_changed.py.
"""

import resource
import time
from random import Random

from tests.bench.embedded_site import embedded_site  # noqa: F401  # isort: skip  # because: it makes the program ready

from tests.fuzz.bombs import MOST_MEGABYTES, try_all
from tests.fuzz.inlets import INLETS, Inlet
from tests.fuzz.mangle import mangled
from tests.fuzz.tried import tried

INPUTS = 10_000


def main(inputs: int = INPUTS, *, bombs: bool = True) -> None:
    """Prints a line for each inlet; raises at the first file that is neither read nor refused."""
    before = _megabytes()
    each = -(-inputs // len(INLETS))
    for name, inlet in INLETS.items():
        _spoil(name, inlet, each)
    grown = _megabytes() - before
    print(f"{each * len(INLETS):,} spoilt files, {grown} MB more at most.")
    if grown >= MOST_MEGABYTES:
        raise AssertionError(f"{grown} MB")
    if bombs:
        try_all()


def _spoil(name: str, inlet: Inlet, count: int) -> None:
    dice, reals = Random(f"bench {name}"), inlet.real()
    read, slowest, began = 0, 0.0, time.process_time()
    for _ in range(count):
        one = tried(inlet, mangled(dice.choice(reals), reals, dice))
        read, slowest = read + one.is_read, max(slowest, one.seconds)
    took = time.process_time() - began
    print(
        f"{name:14} {count:5} files, {read:4} read all the same, slowest {slowest:.2f} s, {took:.1f} s in all"
    )


def _megabytes() -> int:
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024

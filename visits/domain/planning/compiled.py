"""Functions as machine code: the one file that knows the compiler (numba).

What is compiled is kept beside the source (`__pycache__`), so a machine compiles once. Import only while planning:
the compiler takes most of a second to load.
"""

from collections.abc import Callable
from typing import ParamSpec, TypeVar

from numba import njit

P = ParamSpec("P")
R = TypeVar("R")


def compiled(function: Callable[P, R]) -> Callable[P, R]:
    """The function in machine code; while it runs, other threads may run Python."""
    try:
        return njit(cache=True, nogil=True)(function)
    except RuntimeError:  # because: where no folder can be written to, each process compiles for itself
        return njit(nogil=True)(function)

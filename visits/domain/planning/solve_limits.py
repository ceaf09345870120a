"""How long a search may go on."""

from collections.abc import Callable
from dataclasses import dataclass

Progress = Callable[[float, float], None]
"""Called with (seconds gone, cost of the best plan so far)."""
ShouldStop = Callable[[], bool]


@dataclass(frozen=True, slots=True)
class SolveLimits:
    """`iterations`, where given, replaces `seconds`: the same seed then gives the same plan."""

    seconds: float = 10.0
    seed: int = 1
    iterations: int | None = None

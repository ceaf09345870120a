"""One shift with its jobs in an order, as the timing needs it."""

from dataclasses import dataclass
from functools import cached_property

from visits.domain.planning.openings import Opening
from visits.domain.planning.problem import Shift


@dataclass(frozen=True)
class Route:
    """`legs` (deciseconds) has one drive more than there are jobs: out, between, and home."""

    shift: Shift
    legs: tuple[int, ...]
    lengths: tuple[int, ...]
    starts: tuple[tuple[Opening, ...], ...]

    @cached_property
    def nonstop(self) -> int:
        """Deciseconds of drives and jobs without any wait."""
        return sum(self.legs) + sum(self.lengths)

    @cached_property
    def least_late(self) -> float:
        """The least lateness any order of time could give."""
        return sum(options[0].late for options in self.starts)

    @cached_property
    def hour_rate(self) -> float:
        """Cost of one decisecond of work."""
        return self.shift.cost_per_hour / 36_000


def earliest(options: tuple[Opening, ...], ready: int) -> Opening | None:
    """The first opening that is not over at `ready`."""
    for option in options:
        if option.last >= ready:
            return option
    return None

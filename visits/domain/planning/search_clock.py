"""The limits of one solve, watched: time or steps gone, a stop asked for, progress told."""

from collections.abc import Callable
from dataclasses import dataclass, field
from time import monotonic

from visits.domain.planning.solve_limits import Progress, ShouldStop, SolveLimits

LOADING_SECONDS = 4.0
"""What is loaded in less than this counts as part of the search."""


@dataclass
class SearchClock:
    """`share(steps)` runs from 0 to 1 as the search uses up its limits."""

    limits: SolveLimits
    progress: Progress | None = None
    should_stop: ShouldStop | None = None
    now: Callable[[], float] = monotonic
    began: float = field(init=False)
    told: float = 0.0

    def __post_init__(self) -> None:
        self.began = self.now()

    @property
    def gone(self) -> float:
        """Seconds since the solve began."""
        return self.now() - self.began

    def wait_for(self, loading: Callable[[], object]) -> None:
        """Let something load. Compiling, the first time on a machine, takes long and does not count."""
        before = self.now()
        loading()
        spent = self.now() - before
        if spent > LOADING_SECONDS:
            self.began += spent

    @property
    def half_gone(self) -> bool:
        """Whether a proof should give way to the search: half the seconds are gone, or a stop was asked for."""
        return self.stopped or (self.limits.iterations is None and self.gone > self.limits.seconds / 2)

    @property
    def stopped(self) -> bool:
        """Whether the caller asked to stop."""
        return self.should_stop is not None and self.should_stop()

    def tell(self, cost: float, *, at_once: bool = False) -> None:
        """Progress to the caller, at most five times a second."""
        if self.progress is not None and (at_once or self.gone - self.told > 0.2):
            self.told = self.gone
            self.progress(self.gone, cost)

    def until(self, seconds: float, steps: int, cost: Callable[[], float]) -> Callable[[int], float]:
        """How much of this stage is used: it ends at `seconds` of the solve, or after `steps` if those rule."""
        first = self.gone

        def share(done: int) -> float:
            self.tell(cost())
            if self.stopped:
                return 1.0
            if self.limits.iterations is not None:
                return done / max(1, steps)
            return min(1.0, (self.gone - first) / max(0.001, seconds - first))

        return share

"""How long a proof may go on."""

from collections.abc import Callable
from time import monotonic

ShouldStop = Callable[[], bool]


class TimeLeft:
    """From now on for so many seconds, or until told to stop."""

    def __init__(self, seconds: float, should_stop: ShouldStop | None = None) -> None:
        self.began = monotonic()
        self.ends = self.began + seconds
        self.should_stop = should_stop

    @property
    def gone(self) -> float:
        return monotonic() - self.began

    @property
    def left(self) -> float:
        """Seconds left; 0 where the time is up."""
        if self.should_stop is not None and self.should_stop():
            return 0.0
        return max(0.0, self.ends - monotonic())

    @property
    def over(self) -> bool:
        return self.left == 0.0

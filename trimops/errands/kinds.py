"""What is done for each job, by the functions of the apps' `tasks.py`."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from trimops.jobs import Job

EXTRA_SECONDS = 30
"""Between being asked to stop and being stopped."""


@dataclass(frozen=True)
class ErrandKind:
    """`work` is handed the errand's ids by name. `seconds`, `alone`: see `does`."""

    work: Callable[..., None]
    seconds: int
    alone: str


KINDS: dict[Job, ErrandKind] = {}


class Gone(Exception):
    """What the errand was about has been erased: there is nothing left to do, and it counts as done."""


class TryLater(Exception):
    """It is nobody's fault that this cannot be done yet: come again at `at` (aware). It does not count as a try."""

    def __init__(self, at: datetime, words: str = "") -> None:
        super().__init__(words)
        self.at = at

"""Operations asked in rounds, each time of a new business with one row of everything."""

import sys
import time
from collections.abc import Sequence
from random import Random

from tests.standards.api.asked_all import Asking, Told, everybody_asks, note
from tests.walls.furnished import furnish


class Rounds:
    """`fresh` calls of an operation go to one business."""

    def __init__(self, at: str, names: Sequence[str], dice: Random, fresh: int) -> None:
        self.at, self.names, self.dice, self.fresh = at, names, dice, fresh
        self.made = 0

    def ask(self, examples: int, until: float | None) -> dict[str, Told]:
        """What came of each operation; those that were begun before `until` by the monotonic clock."""
        told: dict[str, Told] = {}
        for turn, left in enumerate(range(examples, 0, -self.fresh)):
            for name in self.names:
                if until is not None and time.monotonic() > until:
                    return told
                told[name] = self._house().ask(name, min(self.fresh, left), turn, told.get(name))
                note(name, told[name])
            print(f"round {turn + 1}: {len(told)} operations", file=sys.stderr, flush=True)
        return told

    def _house(self) -> Asking:
        """A business that nobody has asked yet, and all who may ask it."""
        self.made += 1
        return everybody_asks(self.at, furnish(f"Bench Trimming {self.made}"), self.dice)

"""Memory of processes, looked at every few seconds, and whether it grows."""

import threading
import time
from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path
from statistics import linear_regression, mean


def children_of(process_id: int) -> list[int]:
    listed = Path(f"/proc/{process_id}/task/{process_id}/children").read_text()
    return [int(word) for word in listed.split()]


def resident_mb(process_id: int) -> float:
    for line in Path(f"/proc/{process_id}/status").read_text().splitlines():
        if line.startswith("VmRSS:"):
            return int(line.split()[1]) / 1024
    raise ValueError(f"process {process_id} tells no memory")


@dataclass(frozen=True)
class Grown:
    """Of one process: MB in the mean of the second and the last third of the time, and MB an hour over both."""

    second_third: float
    last_third: float
    mb_an_hour: float

    @property
    def ratio(self) -> float:
        return self.last_third / self.second_third


@dataclass
class Watched:
    """Looks at the processes from a thread of its own until `stop`."""

    processes: Sequence[int]
    every: float
    looks: list[tuple[float, dict[int, float]]] = field(default_factory=list)

    def __post_init__(self) -> None:
        self._ends = threading.Event()
        self._thread = threading.Thread(target=self._look, daemon=True)
        self._thread.start()

    def _look(self) -> None:
        while not self._ends.is_set():
            self.looks.append((time.monotonic(), {each: resident_mb(each) for each in self.processes}))
            self._ends.wait(self.every)

    def stop(self) -> dict[int, Grown]:
        self._ends.set()
        self._thread.join()
        return {each: grown([(at, found[each]) for at, found in self.looks]) for each in self.processes}


def grown(looks: Sequence[tuple[float, float]]) -> Grown:
    """From (seconds, MB). The first third is left out: a process warms up."""
    first, last = looks[0][0], looks[-1][0]
    third = (last - first) / 3
    second = [each for each in looks if first + third <= each[0] < first + 2 * third]
    third_part = [each for each in looks if each[0] >= first + 2 * third]
    times, sizes = zip(*second, *third_part, strict=True)
    slope = linear_regression(times, sizes).slope * 3600
    return Grown(mean(size for _, size in second), mean(size for _, size in third_part), slope)

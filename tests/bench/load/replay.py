"""Days are replayed: each person's calls spread over the time there is, by a few hands that hold a line each."""

import heapq
import http.client
import random
import threading
import time
from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import count

from tests.bench.load.day_calls import Answer, Call, Person

BARE = "bare view, one query"
LAST_PART = 0.92
"""Who begins last has made their last call by then."""


@dataclass
class Heard:
    """Seconds of each answer by kind, and what was wrong."""

    seconds: dict[str, list[float]] = field(default_factory=dict)
    statuses: dict[int, int] = field(default_factory=dict)
    wrong: list[str] = field(default_factory=list)
    late: list[float] = field(default_factory=list)
    """By how many seconds a call was made later than it was due: this client was too slow, or all lines were busy."""


@dataclass(order=True)
class _Turn:
    due: float
    number: int
    person: Person = field(compare=False)
    at: int = field(compare=False)
    pause: float = field(compare=False)


class Replay:
    """`bare` is (port, business key): each tenth call is followed by one there, under the same load."""

    def __init__(self, port: int, bare: tuple[int, int], people: Sequence[Person], seconds: float) -> None:
        self._port, self._bare = port, bare
        self.heard = Heard()
        self._lock, self._numbers = threading.Lock(), count()
        chance = random.Random(9)
        self._turns = [self._first(person, chance, seconds * LAST_PART) for person in people]
        heapq.heapify(self._turns)

    def _first(self, person: Person, chance: random.Random, seconds: float) -> _Turn:
        begins = chance.uniform(0, seconds * 0.3)
        return _Turn(begins, next(self._numbers), person, 0, (seconds - begins) / len(person))

    def run(self, hands: int) -> Heard:
        self._began = time.monotonic()
        threads = [threading.Thread(target=self._hand, daemon=True) for _ in range(hands)]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
        return self.heard

    def _hand(self) -> None:
        lines = {port: http.client.HTTPConnection("127.0.0.1", port, timeout=60) for port in self._ports()}
        while (turn := self._next()) is not None:
            wait = self._began + turn.due - time.monotonic()
            if wait > 0:
                time.sleep(wait)
            with self._lock:
                self.heard.late.append(max(0.0, -wait))
            self._step(lines[self._port], turn)
            if turn.number % 10 == 0:
                self._ask_bare(lines[self._bare[0]])
                # because: the next one may be due after the server has closed a line that nobody uses (keepalive)
                lines[self._bare[0]].close()
        for line in lines.values():
            line.close()

    def _ports(self) -> tuple[int, int]:
        return self._port, self._bare[0]

    def _next(self) -> _Turn | None:
        with self._lock:
            return heapq.heappop(self._turns) if self._turns else None

    def _step(self, line: http.client.HTTPConnection, turn: _Turn) -> None:
        step = turn.person[turn.at]
        try:
            call = step.ask()
            answer = self._ask(line, call)
            if answer.status not in call.good:
                raise AssertionError(f"{answer.status} {answer.body[:300]!r}")
            if step.hear is not None:
                step.hear(answer)
        except Exception as fault:
            line.close()
            what = f"{call.method} {call.path}" if "call" in locals() else "a call that could not be made"
            with self._lock:
                self.heard.wrong.append(f"{what}: {type(fault).__name__} {fault}"[:500])
        if turn.at + 1 < len(turn.person):
            due = turn.due + turn.pause
            after = _Turn(due, next(self._numbers), turn.person, turn.at + 1, turn.pause)
            with self._lock:
                heapq.heappush(self._turns, after)

    def _ask_bare(self, line: http.client.HTTPConnection) -> None:
        call = Call(BARE, "GET", f"/business/{self._bare[1]}/")
        try:
            assert self._ask(line, call).status == 200
        except Exception as fault:
            line.close()
            with self._lock:
                self.heard.wrong.append(f"{BARE}: {fault!r}")

    def _ask(self, line: http.client.HTTPConnection, call: Call) -> Answer:
        if line.sock is None:
            line.connect()
        began = time.perf_counter()
        line.request(call.method, call.path, call.body or None, dict(call.headers))
        told = line.getresponse()
        body = told.read()
        spent = time.perf_counter() - began
        headers = {name.lower(): value for name, value in told.getheaders()}
        with self._lock:
            self.heard.seconds.setdefault(call.kind, []).append(spent)
            self.heard.statuses[told.status] = self.heard.statuses.get(told.status, 0) + 1
        return Answer(told.status, headers, body)

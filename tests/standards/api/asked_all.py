"""Every operation of the API, asked by schemathesis over HTTP, with every check that it has.

In `make test` each operation is asked 50 times in all; the tokens of the four roles and the session of one take turns,
mostly those that may. Some of what is drawn becomes own rows (hand.py). What an operation did is taken back after it.
"""

import json
import os
import random
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import cache
from typing import Any
from zlib import crc32

import requests
import schemathesis
from django.conf import settings
from django.contrib.staticfiles.handlers import StaticFilesHandler
from django.db import connections, transaction
from django.test.testcases import LiveServerThread
from hypothesis import HealthCheck, Phase, given, seed
from hypothesis import settings as hypothesis_settings
from hypothesis import strategies as st
from schemathesis import GenerationMode
from schemathesis.core.failures import Failure, FailureGroup
from schemathesis.specs.openapi.checks import ignored_auth

from tests.standards.api.hand import Hand
from tests.walls.askers import Asker
from tests.walls.cells import may
from trimops.api.description import DESCRIPTION

# Data that fit the description may still be refused by a rule of the work, and by who asks; never as malformed.
FITS = ["2xx", "304", "401", "403", "404", "409", "412", "422", "428", "429"]
# Data that break it are malformed, unless something before it says no.
BREAKS = ["400", "401", "403", "404", "406", "405", "412", "413", "415", "428", "429"]
CONFIG = {
    "generation": {"with-security-parameters": False},
    "checks": {
        "positive_data_acceptance": {"expected-statuses": FITS},
        "negative_data_rejection": {"expected-statuses": BREAKS},
    },
}


# So many calls of each operation: 1,000 in `make bench`.
EXAMPLES = int(os.environ.get("TRIMOPS_API_EXAMPLES", "50"))
# Where a run is followed: a line for each operation as it is done.
NOTES = os.environ.get("TRIMOPS_API_NOTES", "")


@cache
def described() -> schemathesis.BaseSchema:
    config = schemathesis.Config.from_dict(CONFIG)
    return schemathesis.openapi.from_dict(json.loads(DESCRIPTION.read_text()), config=config)


def operations() -> dict[str, Any]:
    """Each operation by its id."""
    found = (each.ok() for each in described().get_all_operations())
    return {each.definition.raw["operationId"]: each for each in found}


@dataclass
class Told:
    """What came of one operation: how often each status, and each kind of fault with its first case."""

    statuses: Counter[int] = field(default_factory=Counter)
    faults: dict[str, str] = field(default_factory=dict)

    def words(self) -> str:
        return "\n".join(f"{what}\n{how}" for what, how in self.faults.items())


def note(name: str, told: Told) -> None:
    """A line for who watches a long run."""
    if NOTES:
        with open(NOTES, "a") as out:
            out.write(f"{name} {dict(told.statuses)}\n{told.words()}\n")


@contextmanager
def running() -> Iterator[str]:
    """The program behind a real socket, in this process and on this very connection; gives its address."""
    mine = connections["default"]
    mine.inc_thread_sharing()
    server = LiveServerThread("localhost", StaticFilesHandler, {"default": mine})
    server.daemon = True
    server.start()
    server.is_ready.wait()
    if server.error:
        raise server.error
    try:
        yield f"http://localhost:{server.port}"
    finally:
        server.terminate()  # because: threads of it still say good-bye, the connection stays shared


class Asking:
    """All who ask, each with a connection of their own; whoever may comes more often than who may not."""

    def __init__(self, at: str, askers: list[Asker], hand: Hand) -> None:
        self.at, self.askers, self.hand = at, askers, hand
        self.ways = {asker.name + asker.cookie[:4]: _way_of(asker) for asker in askers}

    def ask(self, name: str, count: int) -> Told:
        """Ask it `count` times; what was done is taken back at the end."""
        operation, told = operations()[name], Told()
        turn = iter(self._turns(operation, count))
        drawn = st.one_of(*(operation.as_strategy(generation_mode=mode) for mode in GenerationMode))

        @seed(crc32(name.encode()))
        @hypothesis_settings(
            max_examples=count,
            phases=[Phase.generate],
            database=None,
            deadline=None,
            suppress_health_check=list(HealthCheck),
        )
        @given(case=drawn)
        def each(case: schemathesis.Case) -> None:
            asker = next(turn, self.askers[0])
            self.hand.guide(case)
            self._ask(case, asker, told)

        with transaction.atomic():
            each()
            transaction.set_rollback(True)
        return told

    def _ask(self, case: schemathesis.Case, asker: Asker, told: Told) -> None:
        way, headers = self.ways[asker.name + asker.cookie[:4]], _signed(asker)
        answer = case.call(base_url=self.at, session=way, headers=headers)
        told.statuses[answer.status_code] += 1
        left_out = [ignored_auth] if asker.cookie or told.statuses[answer.status_code] > 1 else []
        try:
            case.validate_response(
                answer,
                headers=headers,
                excluded_checks=left_out,
                transport_kwargs={"base_url": self.at, "headers": headers},
            )
        except FailureGroup as group:
            for fault in group.exceptions:
                _note(told, fault, case, answer, asker)

    def _turns(self, operation: Any, count: int) -> list[Asker]:
        action = operation.definition.raw["description"].rpartition("Scope: `")[2].partition("`")[0]
        allowed = [asker for asker in self.askers if may(asker, action)] or self.askers
        others = [asker for asker in self.askers if asker not in allowed] or allowed
        dice = random.Random(crc32(operation.label.encode()))
        return [dice.choice(others if dice.random() < 0.12 else allowed) for _ in range(2 * count)]


def _way_of(asker: Asker) -> requests.Session:
    way = requests.Session()
    way.trust_env = False
    if not asker.text:
        way.cookies.set(settings.SESSION_COOKIE_NAME, asker.cookie)
        way.cookies.set(settings.CSRF_COOKIE_NAME, "x" * 32)
        way.headers["X-CSRFToken"] = "x" * 32
    return way


def _signed(asker: Asker) -> dict[str, str]:
    return {"Authorization": f"Bearer {asker.text}"} if asker.text else {}


def _note(told: Told, fault: Exception, case: schemathesis.Case, answer: Any, asker: Asker) -> None:
    title = getattr(fault, "title", type(fault).__name__) if isinstance(fault, Failure) else repr(fault)
    sent = f"{case.method} {case.formatted_path} {dict(case.query or {})} {dict(case.headers or {})}"
    body = f"{case.body!r}"[:700]
    told.faults.setdefault(
        f"{title} {answer.status_code}",
        f"  as {asker.name}: {sent[:700]}\n  body {body}\n"
        f"  told {answer.status_code} {answer.content[:500]!r}\n  {str(fault)[:500]}",
    )

"""Every operation of the API, asked by schemathesis, with every check that it has.

In `make test` each operation is asked 50 times, straight through the whole program as gunicorn serves it (its WSGI
application: all middleware, sessions, rights, transactions; only the socket is left out); in `make bench` 1,000 times
over a socket (tests/bench/api). The tokens of the four roles and the session of one take turns, mostly those that may.
What is asked is told in drawing.py; some of it becomes own rows (hand.py). One check is left out for repeats: that an
answer is refused without a token is tried at the first good answer of an operation by a token; it is the same for all.
"""

import os
import random
from collections import Counter
from dataclasses import dataclass, field
from typing import Any
from zlib import crc32

import requests
import schemathesis
from django.conf import settings
from django.db import transaction
from schemathesis.core.failures import Failure, FailureGroup
from schemathesis.core.parameters import ParameterLocation
from schemathesis.core.transport import Response
from schemathesis.specs.openapi.checks import ignored_auth, negative_data_rejection

from tests.standards.api.described import described
from tests.standards.api.drawing import cases, is_sound
from tests.standards.api.hand import Hand
from tests.walls.askers import Asker, by_token, let_in
from tests.walls.cells import may
from tests.walls.example_rows import example_bodies
from tests.walls.furnished import Furnished
from tests.walls.routes import API
from trimops.accounts.roles import Role

# Where a run is followed: a line for each operation as it is done.
NOTES = os.environ.get("TRIMOPS_API_NOTES", "")
# Longer addresses than this are described nowhere, and the web server itself turns them away (RFC 9110, 15.5.15).
LONGEST = 8000
# How often one asks who may not, and how often a read is repeated with the tag of its answer.
MAY_NOT, AGAIN = 0.12, 0.15


@dataclass
class Told:
    """What came of one operation: how often each status, and each kind of fault with its first case."""

    statuses: Counter[int] = field(default_factory=Counter)
    faults: dict[str, str] = field(default_factory=dict)
    proven: set[str] = field(default_factory=set)

    def words(self) -> str:
        return "\n".join(f"{what}\n{how}" for what, how in self.faults.items())


def note(name: str, told: Told) -> None:
    """A line for who watches a long run."""
    if NOTES:
        with open(NOTES, "a") as out:
            out.write(f"{name} {dict(told.statuses)}\n{told.words()}\n")


class Asking:
    """All who ask, each with a connection of their own; whoever may comes more often than who may not."""

    def __init__(self, at: str, askers: list[Asker], hand: Hand, program: Any = None) -> None:
        self.at, self.askers, self.hand = at, askers, hand
        self.said = described(program)
        self.ways = {_name_of(asker): _way_of(asker) for asker in askers}

    def ask_and_undo(self, name: str, count: int) -> Told:
        """What was done is taken back at the end."""
        with transaction.atomic():
            told = self.ask(name, count)
            transaction.set_rollback(True)
        return told

    def ask(self, name: str, count: int, turn: int = 0, told: Told | None = None) -> Told:
        """Ask it `count` times; another `turn`, other cases. What came of it is added to `told`."""
        told = told or Told()
        dice = random.Random(crc32(name.encode()) + turn)
        allowed, others = self._who(self.said.whole[name])
        end = told.statuses.total() + count
        for case in cases(self.said, name, count, turn):
            if told.statuses.total() >= end:
                break
            asker = dice.choice(others if dice.random() < MAY_NOT else allowed)
            self.hand.guide(case, lambda case=case, asker=asker: self._tag(case, asker))  # type: ignore[misc]
            answer = self._ask(case, asker, told)
            tag = answer.headers.get("etag", [""])[0]
            if case.method == "GET" and answer.status_code == 200 and tag and dice.random() < AGAIN:
                case.headers["If-None-Match"] = tag
                self._ask(case, asker, told)
        return told

    def _ask(self, case: schemathesis.Case, asker: Asker, told: Told) -> Response:
        way, headers = self.ways[_name_of(asker)], _signed(asker)
        answer = case.call(base_url=self.at, session=way, headers=headers)
        told.statuses[answer.status_code] += 1
        if answer.status_code == 414 and len(str(answer.request.url)) > LONGEST:
            return answer
        is_proof = bool(asker.text) and 200 <= answer.status_code < 300 and not told.proven
        try:
            case.validate_response(
                answer,
                headers=headers,
                excluded_checks=_left_out(case, answer, is_proof),
                transport_kwargs={"base_url": self.at, "headers": headers},
            )
        except FailureGroup as group:
            for fault in group.exceptions:
                _note(told, fault, case, answer, asker)
        if is_proof:
            told.proven.add(asker.name)
        return answer

    def _tag(self, case: schemathesis.Case, asker: Asker) -> str:
        """The tag of the row that a case would change, as that asker reads it; nothing where there is none."""
        reads = case.operation.schema[case.path]
        if "get" not in reads:
            return ""
        read = reads["get"].Case(path_parameters=dict(case.path_parameters))
        way = self.ways[_name_of(asker)]
        answer = read.call(base_url=self.at, session=way, headers=_signed(asker))
        return str(answer.headers.get("etag", [""])[0])

    def _who(self, operation: Any) -> tuple[list[Asker], list[Asker]]:
        """Those who may, and those who may not; all, where there are none of them."""
        action = operation.definition.raw["description"].rpartition("Scope: `")[2].partition("`")[0]
        allowed = [asker for asker in self.askers if may(asker, action)] or self.askers
        return allowed, [asker for asker in self.askers if asker not in allowed] or allowed


def everybody_asks(at: str, mine: Furnished, dice: random.Random, program: Any = None) -> Asking:
    """The tokens of all parts and the owner's session, let in to a furnished business."""
    let = let_in(mine)
    askers = [by_token(let[role.value]) for role in Role] + [let[Role.OWNER.value]]
    return Asking(at, askers, Hand([mine.keys, mine.other], example_bodies(mine), API, dice), program)


def _left_out(case: schemathesis.Case, answer: Response, is_proof: bool) -> list[Any]:
    """The check that is for the first good answer alone; and a spoilt address, where a query out of all reason is told
    first (422): the words of a query are read before the row is looked for.
    """
    left_out = [] if is_proof else [ignored_auth]
    spoilt = [place for place in ParameterLocation if not is_sound(case, place)]
    if answer.status_code == 422 and spoilt == [ParameterLocation.PATH]:
        left_out.append(negative_data_rejection)
    return left_out


def _name_of(asker: Asker) -> str:
    return asker.name + asker.cookie[:4]


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

"""The same moment for several, in several processes with several threads each: round after round, what each was told.

Processes are forked from the test's, as gunicorn forks its workers, so that nothing that only locks within one process
can help. Each hand is a thread with a database connection of its own; a barrier over all processes starts each round.
"""

import json
import multiprocessing
import os
import re
import traceback
from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from html import unescape
from multiprocessing.connection import Connection
from typing import Any, NamedTuple

from django.core.cache import cache
from django.db import connection, connections
from django.test import Client

from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken

ROUNDS = int(os.environ.get("TRIMOPS_ROUNDS", "6"))
PROCESSES = 2
LONGEST = 120
# What a form says whose row is another one by now.
LOOKS = "Somebody changed this while you had it open"
SAID_NO = re.compile(r'<div class="mend" role="alert".*?</div>', re.DOTALL)


class Told(NamedTuple):
    """What one hand was told: a status (of a service 200 or 409), the code or words of a refusal, the body."""

    status: int
    why: str = ""
    body: str = ""

    @property
    def is_done(self) -> bool:
        return self.status < 400


Act = Callable[[], Told]


def crowd(rounds: Sequence[Sequence[Act]]) -> list[list[Told]]:
    """Every round's acts at once; the answers in the order of the acts. Each round has as many hands."""
    hands = len(rounds[0])
    assert all(len(acts) == hands for acts in rounds)
    connections.close_all()
    fork = multiprocessing.get_context("fork")
    start, answers = fork.Barrier(hands), {}
    started = []
    for which in range(PROCESSES):
        ours, theirs = fork.Pipe(duplex=False)
        numbers = range(which, hands, PROCESSES)
        process = fork.Process(target=_work, args=(rounds, numbers, start, theirs), daemon=True)
        process.start()
        theirs.close()
        started.append((process, ours))
    for process, ours in started:
        assert ours.poll(LONGEST), "the hands do not answer"
        answers |= ours.recv()
        process.join(LONGEST)
    return [[answers[hand][turn] for hand in range(hands)] for turn in range(len(rounds))]


def _work(rounds: Sequence[Sequence[Act]], numbers: Sequence[int], start: Any, tell: Connection) -> None:
    with ThreadPoolExecutor(len(numbers)) as hands:
        told = hands.map(lambda number: _hand([acts[number] for acts in rounds], start), numbers)
        tell.send(dict(zip(numbers, told, strict=True)))
    tell.close()


def _hand(acts: Sequence[Act], start: Any) -> list[Told]:
    told = []
    for act in acts:
        start.wait(LONGEST)
        try:
            told.append(act())
        except Exception:
            # because: a fault is an answer like any other here, and the test shows it
            told.append(Told(500, traceback.format_exc()[-2000:]))
    connection.close()
    cache.close()
    return told


class Person:
    """Somebody signed in, at the pages and at the API, and by hand at the services."""

    def __init__(self, user: User | None = None, token: str = "") -> None:
        self.user, self.client = user, Client(raise_request_exception=False)
        self.headers = {"Authorization": f"Bearer {token}"} if token else {}
        if user is not None:
            self.client.force_login(user)

    def api(self, method: str, address: str, body: object = None, **headers: str) -> Act:
        """`person.api("POST", "/visits/1/confirm/", Idempotency_Key="k")`."""
        given = {**self.headers, **{name.replace("_", "-"): value for name, value in headers.items()}}
        sent = b"" if body is None else json.dumps(body).encode()

        def act() -> Told:
            answer = self.client.generic(
                method, f"/api/v1{address}", sent, content_type="application/json", headers=given
            )
            words = answer.content.decode()
            if answer.status_code >= 500:
                return Told(answer.status_code, _fault_in(answer), words)
            code = json.loads(words).get("code", "") if answer.status_code >= 400 else ""
            return Told(answer.status_code, code, words)

        return act

    def page(self, address: str, /, **form: object) -> Act:
        """A form sent; where it is shown again or refused, the words of what is to be mended."""

        def act() -> Told:
            answer = self.client.post(address, form)
            words = answer.content.decode()
            if answer.status_code >= 500:
                return Told(answer.status_code, _fault_in(answer), words)
            found = SAID_NO.search(words) if answer.status_code >= 400 else None
            return Told(answer.status_code, unescape(found[0]) if found else _title(words), words)

        return act


def _title(words: str) -> str:
    return words.partition("<title>")[2].partition("</title>")[0]


def _fault_in(answer: Any) -> str:
    """What went wrong behind a 5xx, for who reads the test's output."""
    return "".join(traceback.format_exception(*answer.exc_info))[-2000:] if answer.exc_info else ""


def form_of(person: Person, address: str, **changed: object) -> dict[str, object]:
    """What a browser sends back of the page's form, with these fields changed."""
    form = person.client.get(address).context["form"]
    told = {name: form[name].value() for name in form.fields}
    return {name: value for name, value in told.items() if value is not None and value is not False} | changed


def by_service(call: Callable[[], object]) -> Act:
    """A service called by a job or a command."""

    def act() -> Told:
        try:
            made = call()
        except RuleBroken as fault:
            return Told(409, fault.code)
        return Told(200, "", str(getattr(made, "pk", made)))

    return act


def fault_of(told: Sequence[Sequence[Told]]) -> list[Told]:
    """Answers that nobody should ever have."""
    return [Told(each.status, each.why) for answers in told for each in answers if each.status >= 500]


def one_wins(told: Sequence[Told], *reasons: str) -> Told:
    """The one that did it; all others must have heard one of these codes or words."""
    done = [each for each in told if each.is_done]
    others = [each for each in told if not each.is_done]
    assert len(done) == 1, [each[:2] for each in told]
    for each in others:
        assert each.status in (400, 409, 412), each[:2]
        assert any(reason in each.why for reason in reasons), each[:2]
    return done[0]

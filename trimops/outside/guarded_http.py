"""One question over HTTP to an address that somebody typed: bounded in time and size, and never asked inside.

The one place from which this site asks others (OWASP ASVS 5.0, 13.2.4: against server-side request forgery). It keeps
no cookie, sends no credential of ours, takes no proxy from the environment, and looks at every redirect like at the
first address.
"""

import ssl
import threading
import time
from collections.abc import Mapping
from dataclasses import dataclass, field
from queue import Empty, SimpleQueue

import httpcore

from trimops.outside.bounded_body import bounded_body
from trimops.outside.checked_line import CheckedLine, Until
from trimops.outside.guard import Guard
from trimops.outside.no_answer import NoAnswer, Why
from trimops.outside.web_address import WebAddress, led_on, trusted

REDIRECTS = frozenset({301, 302, 303, 307, 308})
WHO_ASKS = "trimops"


@dataclass(frozen=True)
class Question:
    url: str
    method: str = "GET"
    headers: Mapping[str, str] = field(default_factory=dict)
    body: bytes = b""


@dataclass(frozen=True)
class Bounds:
    """Of one question with all its redirects: seconds, bytes of the body packed and unpacked, redirects followed."""

    seconds: float = 20.0
    largest: int = 2_000_000
    redirects: int = 3
    connect_seconds: float = 5.0


@dataclass(frozen=True)
class Answer:
    """`headers` by their names in small letters; of one that stands twice the last."""

    status: int
    headers: Mapping[str, str]
    body: bytes


def ask(question: Question, guard: Guard, bounds: Bounds) -> Answer:
    """Whatever the other side answers, also with a status of refusal; NoAnswer when it does not."""
    came: SimpleQueue[Answer | Exception] = SimpleQueue()
    until = Until(time.monotonic() + bounds.seconds)
    # In a thread of its own: looking up a name knows no limit of time. All that comes after it does.
    threading.Thread(
        target=lambda: came.put(_outcome(question, guard, bounds, until)), name="ask-outside", daemon=True
    ).start()
    try:
        outcome = came.get(timeout=bounds.seconds)
    except Empty:
        raise NoAnswer(Why.SLOW, "it took too long to answer") from None
    if isinstance(outcome, Exception):
        raise outcome
    return outcome


def _outcome(question: Question, guard: Guard, bounds: Bounds, until: Until) -> Answer | Exception:
    try:
        return _follow(question, guard, bounds, until)
    except httpcore.TimeoutException:
        return NoAnswer(Why.SLOW, "it took too long to answer")
    except httpcore.ConnectError as fault:
        return NoAnswer(Why.AWAY, _why_no_line(fault))
    except (httpcore.NetworkError, httpcore.ProtocolError, OSError):
        return NoAnswer(Why.BROKE_OFF, "the line broke off")
    except Exception as fault:  # because: it is raised where the question was asked, not lost in this thread
        return fault


def _why_no_line(fault: httpcore.ConnectError) -> str:
    # because: the pool raises it anew "from None", and only this keeps what it was made of
    reason = fault.args[0] if fault.args else None
    if isinstance(reason, ssl.SSLCertVerificationError):
        return "its certificate does not prove that it is who it says"
    if isinstance(reason, ssl.SSLError):
        return "no safe line to it could be made"
    return "nobody answers at the address"


def _follow(question: Question, guard: Guard, bounds: Bounds, until: Until) -> Answer:
    target = guard.target(question.url)
    for hop in range(bounds.redirects + 1):
        answer = _ask_once(question, target, guard, bounds, until)
        if answer.status not in REDIRECTS or "location" not in answer.headers:
            return answer
        if question.method != "GET" or hop == bounds.redirects:
            break
        target = guard.target(led_on(target, answer.headers["location"]))
    raise NoAnswer(Why.ELSEWHERE, "it points to another address, which is not followed")


def _ask_once(question: Question, target: WebAddress, guard: Guard, bounds: Bounds, until: Until) -> Answer:
    line = CheckedLine(guard, target, until, bounds.connect_seconds)
    headers = {"User-Agent": WHO_ASKS, "Accept-Encoding": "gzip", **question.headers}
    named = [(b"Host", target.authority), *((k.encode(), v.encode()) for k, v in headers.items())]
    url = httpcore.URL(
        scheme=target.scheme.encode(), host=target.host.encode(), port=target.port, target=target.path
    )
    with (
        httpcore.ConnectionPool(trusted(), max_connections=1, network_backend=line) as pool,
        pool.stream(question.method, url, headers=named, content=question.body or None) as answer,
    ):
        kept = {name.decode("latin-1").lower(): text.decode("latin-1") for name, text in answer.headers}
        if answer.status in REDIRECTS:
            return Answer(answer.status, kept, b"")
        body = bounded_body(answer.iter_stream(), kept.get("content-encoding", ""), bounds.largest)
        return Answer(answer.status, kept, body)

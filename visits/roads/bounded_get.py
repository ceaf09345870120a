"""One HTTP question with a limit on time and size, whatever the other side does."""

import threading
from dataclasses import dataclass
from queue import Empty, SimpleQueue

import httpx

from visits.roads.road_engine import RoadsUnavailable

LARGEST = 4_000_000
"""Bytes of an answer. A table of 50 x 50 with two figures a cell is below 60 kB."""

CONNECT_SECONDS = 2.0
# Not packed: a small packed answer could unpack to any size.
HEADERS = {"Accept": "application/json", "Accept-Encoding": "identity"}


@dataclass(frozen=True)
class Answer:
    status: int
    body: bytes


def bounded_get(url: str, seconds: float) -> Answer:
    """Status and body; RoadsUnavailable when it takes longer than `seconds`, is too large, or points elsewhere.

    A redirect is not followed: it could lead to an address inside the house that nobody meant to ask.
    """
    came: SimpleQueue[Answer | RoadsUnavailable] = SimpleQueue()
    timeout = httpx.Timeout(seconds, connect=min(CONNECT_SECONDS, seconds))
    with httpx.Client(timeout=timeout, follow_redirects=False) as client:
        # In a thread of its own: the client's timeouts begin anew with every byte that drips in, and looking up
        # a name has none. Closing the client on leaving ends the thread at its next byte.
        threading.Thread(target=lambda: came.put(_outcome(client, url)), daemon=True).start()
        try:
            outcome = came.get(timeout=seconds)
        except Empty:
            raise RoadsUnavailable("the roads server is too slow") from None
    if isinstance(outcome, RoadsUnavailable):
        raise outcome
    return outcome


def _outcome(client: httpx.Client, url: str) -> Answer | RoadsUnavailable:
    try:
        return _answer(client, url)
    except RoadsUnavailable as fault:
        return fault
    except httpx.TimeoutException:
        return RoadsUnavailable("the roads server is too slow")
    except httpx.ConnectError:
        return RoadsUnavailable("the roads server cannot be reached")
    except (httpx.HTTPError, httpx.InvalidURL, httpx.StreamError, OSError, RuntimeError):
        return RoadsUnavailable("the roads server broke off")


def _answer(client: httpx.Client, url: str) -> Answer:
    with client.stream("GET", url, headers=HEADERS) as answer:
        if answer.is_redirect or answer.has_redirect_location:
            raise RoadsUnavailable("the roads server points to another address, which is not followed")
        body = bytearray()
        for part in answer.iter_raw(65_536):
            body += part
            if len(body) > LARGEST:
                raise RoadsUnavailable("the roads server's answer is too large")
        return Answer(answer.status_code, bytes(body))

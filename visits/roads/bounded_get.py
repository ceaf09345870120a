"""One question to the roads server with a limit on time and size, whatever the other side does."""

import base64
from urllib.parse import unquote, urlsplit

from trimops.outside.guard import Guard
from trimops.outside.guarded_http import Answer, Bounds, Question, ask
from trimops.outside.no_answer import NoAnswer, Why
from visits.roads.road_engine import RoadsUnavailable

LARGEST = 4_000_000
"""Bytes of an answer. A table of 50 x 50 with two figures a cell is below 60 kB."""

CONNECT_SECONDS = 2.0
_WORDS = {
    Why.REFUSED: "the roads server's address cannot be asked",
    Why.AWAY: "the roads server cannot be reached",
    Why.SLOW: "the roads server is too slow",
    Why.BROKE_OFF: "the roads server broke off",
    Why.LARGE: "the roads server's answer is too large",
    Why.ELSEWHERE: "the roads server points to another address, which is not followed",
}


def bounded_get(url: str, seconds: float) -> Answer:
    """Status and body; RoadsUnavailable when it takes longer than `seconds`, is too large, or points elsewhere.

    Whoever runs this machine named the server, so it may be inside; a redirect could lead to what nobody named.
    """
    parts = urlsplit(url)
    # because: a name and password belong in a header, where no log of addresses shows them
    name, _, host = parts.netloc.rpartition("@")
    headers = {"Accept": "application/json", **({"Authorization": _basic(name)} if name else {})}
    question = Question(parts._replace(netloc=host).geturl(), headers=headers)
    bounds = Bounds(seconds, LARGEST, redirects=0, connect_seconds=min(CONNECT_SECONDS, seconds))
    try:
        return ask(question, Guard.of_named(question.url), bounds)
    except NoAnswer as fault:
        raise RoadsUnavailable(_WORDS[fault.why]) from None


def _basic(name_and_password: str) -> str:
    return "Basic " + base64.b64encode(unquote(name_and_password).encode()).decode()

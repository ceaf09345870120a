"""Who is at work right now, and from where: what the audit trail writes beside each change.

Set around each request, each errand and each command; whatever is written inside is theirs.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, replace


@dataclass(frozen=True)
class Doing:
    """`by` is a person's key, None for the program itself; `via` names page, address, job or command; `seen_from` is
    the network address; `session` marks the sign-in without opening it; `request` is the number in the log.
    """

    by: int | None = None
    via: str = ""
    seen_from: str = ""
    session: str = ""
    request: str = ""


NOBODY = Doing()
_DOING: ContextVar[Doing] = ContextVar("trimops_doing", default=NOBODY)


def who_does_it() -> Doing:
    """Who is at work in this thread or task now."""
    return _DOING.get()


@contextmanager
def done_by(doing: Doing) -> Iterator[None]:
    """All that is written inside the block is theirs."""
    token = _DOING.set(doing)
    try:
        yield
    finally:
        _DOING.reset(token)


def known_better(*, by: int | None = None, via: str = "") -> None:
    """For the rest of the block: who it is, or what is done, was found out only now (the address was resolved, a token
    read). Outside every block it says nothing.
    """
    now = _DOING.get()
    if now is not NOBODY:
        _DOING.set(replace(now, by=by if by is not None else now.by, via=via or now.via))

"""What each line of the log is marked with: the request or the job in which it was written."""

import re
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from types import MappingProxyType
from uuid import uuid4

NOTHING: Mapping[str, str] = MappingProxyType({})
_MARKS: ContextVar[Mapping[str, str]] = ContextVar("trimops_marks", default=NOTHING)

# What proxies make: UUIDs, hex, "1-67891233-abcdef". Nothing that could forge a line or fill the log.
SANE = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]{7,63}")


def marks() -> Mapping[str, str]:
    """The marks of this thread or task now, by name."""
    return _MARKS.get()


@contextmanager
def marked(**more: str) -> Iterator[None]:
    """Every line written inside the block bears these marks as well."""
    token = _MARKS.set({**_MARKS.get(), **more})
    try:
        yield
    finally:
        _MARKS.reset(token)


def request_id(given: str | None) -> str:
    """`given` (an X-Request-ID) where it is 8 to 64 letters, digits, dots and hyphens; else a new one."""
    return given if given and SANE.fullmatch(given) else uuid4().hex

"""The one way round the trail: `with unaudited("why"): ...`, made to be found by grep; a test names who may."""

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar

_off: ContextVar[bool] = ContextVar("trimops_unaudited", default=False)


def is_unaudited() -> bool:
    """Whether the code that runs now stands inside an `unaudited` block."""
    return _off.get()


@contextmanager
def unaudited(reason: str) -> Iterator[None]:
    """Inside, no entry is written. ValueError without a reason in words."""
    if not reason.strip():
        raise ValueError("unaudited() wants a reason in words")
    token = _off.set(True)
    try:
        yield
    finally:
        _off.reset(token)

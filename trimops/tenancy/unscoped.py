"""The one way across the wall: `with unscoped("why"): ...`, made to be found by grep.

The opening lives in a context variable, so another thread or a job that starts elsewhere never sees it. A task
that was started inside copies the context and would keep it for ever; therefore the variable holds an object that
is closed when the block ends, and a closed opening opens nothing. A generator that pauses inside the block would
hand the opening to whoever reads from it; therefore a generator may not open one.
"""

import inspect
import sys
from collections.abc import Callable
from contextvars import ContextVar, Token
from functools import wraps
from types import FrameType, TracebackType
from typing import Any, ParamSpec, TypeVar

P = ParamSpec("P")
R = TypeVar("R")


class _Opening:
    """One entered block."""

    def __init__(self, reason: str) -> None:
        self.reason = reason
        self.is_closed = False


_opening: ContextVar[_Opening | None] = ContextVar("trimops_unscoped", default=None)


def is_unscoped() -> bool:
    """Whether the code that runs now stands inside an `unscoped` block that has not ended."""
    opening = _opening.get()
    return opening is not None and not opening.is_closed


class unscoped:
    """Context manager and decorator that lets rows of every business be read. `reason` says why, in words.

    Raises ValueError on an empty reason, RuntimeError when a generator opens it, TypeError when it decorates one.
    """

    def __init__(self, reason: str) -> None:
        if not isinstance(reason, str) or not reason.strip():
            raise ValueError("unscoped() wants a reason in words")
        self.reason = reason
        self._entered: list[tuple[_Opening, Token[_Opening | None]]] = []

    def __enter__(self) -> None:
        _refuse_generator(sys._getframe(1))
        opening = _Opening(self.reason)
        self._entered.append((opening, _opening.set(opening)))

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        opening, token = self._entered.pop()
        opening.is_closed = True
        _opening.reset(token)

    def __call__(self, function: Callable[P, R]) -> Callable[P, R]:
        if inspect.isgeneratorfunction(function) or inspect.isasyncgenfunction(function):
            raise TypeError("a generator may not be unscoped: it would stay open while it pauses")
        if inspect.iscoroutinefunction(function):
            return self._around_coroutine(function)

        @wraps(function)
        def inside(*args: P.args, **kwargs: P.kwargs) -> R:
            with unscoped(self.reason):
                return function(*args, **kwargs)

        return inside

    def _around_coroutine(self, function: Callable[P, Any]) -> Callable[P, Any]:
        @wraps(function)
        async def inside(*args: P.args, **kwargs: P.kwargs) -> Any:
            with unscoped(self.reason):
                return await function(*args, **kwargs)

        return inside


def _refuse_generator(caller: FrameType) -> None:
    if caller.f_code.co_flags & (inspect.CO_GENERATOR | inspect.CO_ASYNC_GENERATOR):
        raise RuntimeError("unscoped() may not be opened in a generator: it would stay open while it pauses")

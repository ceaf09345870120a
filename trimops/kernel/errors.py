"""The refusals every layer may raise; one web middleware and one DRF handler turn them into answers."""

from typing import ClassVar


class RuleBroken(Exception):
    """A rule of the work says no. Answered 409 with `code`; `message` says what to mend."""

    code: ClassVar[str] = "rule_broken"

    def __init__(self, message: str) -> None:
        super().__init__(message)
        self.message = message


class FieldRefused(RuleBroken):
    """One of the things put down cannot be kept; `field` says which, so that the message stands beside it."""

    def __init__(self, field: str, message: str) -> None:
        super().__init__(message)
        self.field = field


class NotFound(Exception):
    """Nothing by that address within the caller's scope. Answered 404, also for another business's rows."""

"""What comes instead of an answer."""

from collections.abc import Mapping
from typing import Any


class NotRead(Exception):
    """A row is to be changed that this client has not read: it does not know which version it would change."""


class Refused(Exception):
    """The server said no (RFC 9457). Go by `code`; `faults` are (field, reason) of all that is to be mended."""

    def __init__(self, status: int, told: Mapping[str, Any]) -> None:
        self.status = status
        self.code = str(told.get("code", "refused"))
        self.detail = str(told.get("detail", ""))
        self.faults: list[tuple[str, str]] = [(one["field"], one["reason"]) for one in told.get("faults", [])]
        super().__init__(f"{status} {self.code}: {self.detail}")

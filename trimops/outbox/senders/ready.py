"""What a sender is handed, and how it tells what came of it."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from uuid import UUID

from trimops.outbox.domain.outgoing_states import Channel


@dataclass(frozen=True)
class Part:
    """What hangs on a mail. `media_type` may carry parameters ("text/calendar; method=REQUEST")."""

    name: str
    media_type: str
    content: bytes
    is_alternative: bool = False


@dataclass(frozen=True)
class Ready:
    """One message as it goes, the secret in its place. It may go twice: always with the same `key`.

    `address`: a mail address, a phone number as somebody wrote it, or a web address. `from_name`, `country` (two
    letters): of the business. `at`: when this try began, aware. `is_automatic`: no person pressed a button for it.
    """

    business_id: int
    key: UUID
    channel: Channel
    address: str
    body: str
    at: datetime
    subject: str = ""
    reply_to: str = ""
    from_name: str = ""
    country: str = ""
    is_automatic: bool = True
    parts: Sequence[Part] = field(default=())


class NotTaken(Exception):
    """The message did not surely go; the exception's text is what the other side said, for a person to read."""


class Refused(NotTaken):
    """The other side did not take it. `for_good`: it will not take this message to this address later either."""

    def __init__(self, words: str, *, for_good: bool = False) -> None:
        super().__init__(words)
        self.for_good = for_good


class Away(NotTaken):
    """There is nobody to speak to: it is not about this message, and the others of its channel wait a minute too."""


class Unsure(NotTaken):
    """It was under way when the line broke: they may have it or not. It goes again with the same key."""


Sender = Callable[[Ready], str]
"""Hands it over and returns the other side's words. Raises Refused, Away or Unsure, and nothing else."""

"""When a message that did not go is tried again."""

from datetime import datetime, timedelta

PAUSES = (
    timedelta(minutes=1),
    timedelta(minutes=5),
    timedelta(minutes=30),
    timedelta(hours=2),
    timedelta(hours=8),
)
"""Short first, since most servers are back at once (or know a stranger again after some minutes), then ever longer.

RFC 5321 (4.5.4.1) asks a sender to wait at least 30 minutes between tries but lets the first two come sooner; the
steps themselves are our choice.
"""


def next_try(tries: int, failed_at: datetime) -> datetime | None:
    """When to try once more after `tries` (1 or more) in vain; None when it is time that somebody looks at it."""
    if tries < 1:
        raise ValueError("nothing was tried yet")
    return failed_at + PAUSES[tries - 1] if tries <= len(PAUSES) else None

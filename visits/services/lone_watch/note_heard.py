"""The trimmer's phone, or any page of theirs, reached us."""

from collections.abc import Sequence
from datetime import datetime, timedelta

from trimops.accounts.models import User
from trimops.kernel.scope import Scope
from visits.models import LoneWatch
from visits.selectors.lone_watch.open_watches import watches_of

OFTEN = timedelta(minutes=1)


def note_heard(
    *, scope: Scope, trimmer: User, at: datetime, watches: Sequence[LoneWatch] | None = None
) -> int:
    """Keep on each open watch over them that they were heard at `at`, at most once a minute; how many were changed.

    `watches`: the open ones, where they have been read already.

    It says that the phone has a network, not that all is well: a page left open speaks by itself.
    """
    rows = watches_of(scope, trimmer) if watches is None else watches
    stale = [row.pk for row in rows if row.last_heard_at is None or at - row.last_heard_at >= OFTEN]
    if not stale:
        return 0
    return watches_of(scope, trimmer).filter(pk__in=stale).update(last_heard_at=at)

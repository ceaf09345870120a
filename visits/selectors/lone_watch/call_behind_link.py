"""The call behind a link."""

from datetime import datetime, timedelta

from trimops.kernel.secret_link import hash_of
from trimops.tenancy.unscoped import unscoped
from visits.models import WatchCall

OPENS = timedelta(days=2)
"""After the end of its watch; then a link says no more where somebody works."""


def call_behind(secret: str, now: datetime) -> WatchCall | None:
    """With its watch, visit, farm and business; None for a link that never was or that has ended."""
    with unscoped("whoever holds the secret of a call may see it"):
        rows = WatchCall.objects.filter(secret_hash=hash_of(secret))
        call = rows.select_related("business", "watch__trimmer", "watch__visit__farm").first()
    if call is None:
        return None
    ended = call.watch.ended_at
    return None if ended is not None and now > ended + OPENS else call

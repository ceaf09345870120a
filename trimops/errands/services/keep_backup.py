"""A backup a day, made by itself."""

from datetime import datetime, timedelta

from trimops.backup.daily import make_daily_backup
from trimops.backup.make_backup import BackupMade
from trimops.errands.only_one import only_one
from trimops.errands.selectors.newest_backup import newest_backup, newest_try

EVERY = timedelta(hours=23)
"""Less than a day, so that the hour at which it is looked for does not wander."""
AGAIN = timedelta(hours=6)
"""After one that failed or could not be tried out."""


def keep_backup(*, now: datetime) -> BackupMade | None:
    """Make one where the newest that was tried out is about a day old; None where there is a newer one, or another
    process is at it. Raises what `make_backup` raises: whoever runs the site must hear of it.
    """
    with only_one("backup") as is_mine:
        if not is_mine or not is_backup_due(now):
            return None
        return make_daily_backup(at=now)


def is_backup_due(now: datetime) -> bool:
    """Also where there is none at all. One that could not be tried out does not count, but the next is made later in
    the day: each is as large as all that is kept, and none of them is dropped."""
    newest, tried = newest_backup(), newest_try()
    is_old = newest is None or newest <= now - EVERY
    return is_old and (tried is None or tried <= now - AGAIN)

"""The newest backup of the whole site."""

from datetime import datetime
from pathlib import Path

from django.conf import settings

from trimops.backup.names import BackupState, backups_in


def newest_backup() -> datetime | None:
    """When the newest one that was tried out was made; None where there is none in TRIMOPS_BACKUP_DIR."""
    kept = [
        each.stamp for each in backups_in(Path(settings.BACKUP_DIR)) if each.state is BackupState.VERIFIED
    ]
    return max(kept, default=None)


def newest_try() -> datetime | None:
    """When the newest one was begun, whatever became of it."""
    return max((each.stamp for each in backups_in(Path(settings.BACKUP_DIR))), default=None)

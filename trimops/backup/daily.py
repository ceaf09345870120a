"""The backup that is made by itself, by what the settings say."""

from datetime import datetime
from pathlib import Path

from django.conf import settings

from trimops.backup.make_backup import BackupMade, make_backup
from trimops.backup.place import place_of_settings
from trimops.backup.program import this_program
from trimops.backup.retention import Keep

DAILY = Keep(days=7, weeks=5, months=12)


def make_daily_backup(*, at: datetime) -> BackupMade:
    """One backup into TRIMOPS_BACKUP_DIR at the aware instant `at`, sealed where TRIMOPS_BACKUP_KEY is set.

    Of seven days, five weeks and twelve months the last one is kept. Raises what `make_backup` raises.
    """
    return make_backup(
        place=place_of_settings(),
        to=Path(settings.BACKUP_DIR),
        at=at,
        program=this_program().version,
        key=settings.BACKUP_KEY or None,
        keep=DAILY,
    )

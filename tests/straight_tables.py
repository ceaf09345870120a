"""Tables made straight from the models, as `--nomigrations` has them, with the locks that migrations put on."""

import sys

from django.apps import apps
from django.conf import settings
from django.core.management import call_command
from django.db import connection

from invoicing.models.issued_locks import lock_issued
from trimops.audit.models.audit_locks import lock_audit


class _Straight:
    """Instead of the migrations of an app: its tables are made from the models as they are."""

    def __contains__(self, app: str) -> bool:
        return True

    def __getitem__(self, app: str) -> None:
        return None


def lay_tables() -> None:
    """All tables of an empty database, at once and without the locks."""
    settings.MIGRATION_MODULES = _Straight()
    call_command("migrate", verbosity=0, run_syncdb=True, stdout=sys.stderr)


def make_tables() -> None:
    """Of an empty database, as migrations leave it."""
    lay_tables()
    put_locks_on()


def put_locks_on() -> None:
    """What was issued stays, and so does the trail."""
    for lock in (lock_issued, lock_audit):
        with connection.schema_editor() as editor:
            lock(apps, editor)

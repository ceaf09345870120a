"""The database's own locks on the trail: triggers that refuse to change or delete it, whoever asks.

Let through are blotting (what an entry held becomes empty, once, and all else of it stays) and cutting (entries go that
a cut covers and that are years old by the database's own clock, then their seals). A migration that alters one of these
tables takes the locks away first and puts them back last, as with issued invoices.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass

from django.apps.registry import Apps
from django.db.backends.base.base import BaseDatabaseWrapper
from django.db.backends.base.schema import BaseDatabaseSchemaEditor

from trimops.audit.domain.cut_line import LEAST_YEARS

ENTRIES, SEALS, CUTS = "audit_auditentry", "audit_auditseal", "audit_auditcut"
STAYS = "The audit trail is only added to."
FACTS = (
    *("id", "business_id", "at", "by_id", "via", "request", "kind", "what", "row_id", "under", "beside"),
    *("content", "digest"),
)
HELD = ("before", "after", "salt", "seen_from", "session")


@dataclass(frozen=True)
class AuditLock:
    """One trigger: before `event` on a row of `table` where `when` holds, refuse."""

    name: str
    table: str
    event: str
    when: str


def lock_audit(apps: Apps, schema_editor: BaseDatabaseSchemaEditor) -> None:
    """For a migration: put the locks on; those that stand already are made anew."""
    put_all_on(schema_editor.connection)


def unlock_audit(apps: Apps, schema_editor: BaseDatabaseSchemaEditor) -> None:
    """For a migration: take them away."""
    take_all_off(schema_editor.connection)


def put_all_on(connection: BaseDatabaseWrapper) -> None:
    """Every lock, made anew."""
    take_all_off(connection)
    for lock in _locks_of(connection):
        put_on(connection, lock)


def take_all_off(connection: BaseDatabaseWrapper) -> None:
    """Every lock that stands."""
    for lock in _locks_of(connection):
        _take_off(connection, lock)


def missing_audit_locks(connection: BaseDatabaseWrapper) -> list[str]:
    """The names of those that do not stand in the database."""
    where = "tgname FROM pg_trigger" if connection.vendor == "postgresql" else "name FROM sqlite_master"
    with connection.cursor() as cursor:
        cursor.execute(f"SELECT {where}")
        there = {name for (name,) in cursor.fetchall()}
    return [lock.name for lock in audit_locks(connection.vendor) if lock.name not in there]


@contextmanager
def deleting_allowed(connection: BaseDatabaseWrapper) -> Iterator[None]:
    """Inside, rows of the trail may be deleted by this transaction: only where a whole business goes."""
    lifted = unlock_deleting(connection)
    yield
    for lock in lifted:
        put_on(connection, lock)


def unlock_deleting(connection: BaseDatabaseWrapper) -> list[AuditLock]:
    """Take the locks on DELETE off, where they stand; these, for `put_on`."""
    missing = missing_audit_locks(connection)
    found = [
        lock for lock in audit_locks(connection.vendor) if lock.event == "DELETE" and lock.name not in missing
    ]
    for lock in found:
        _take_off(connection, lock)
    return found


def _locks_of(connection: BaseDatabaseWrapper) -> Iterator[AuditLock]:
    """Every lock that this database can bear."""
    tables = connection.introspection.table_names()
    # because: the migration that made the trail knew no cuts, and puts these locks on before there is a table of them
    return audit_locks(connection.vendor, knows_cuts=CUTS in tables)


def audit_locks(vendor: str, *, knows_cuts: bool = True) -> Iterator[AuditLock]:
    """Every lock there is; without `knows_cuts` those of a database that has no table of cuts yet."""
    differs = "IS DISTINCT FROM" if vendor == "postgresql" else "IS NOT"
    moves = [f'OLD."{name}" {differs} NEW."{name}"' for name in FACTS]
    fills = [f"NEW.\"{name}\" <> ''" for name in HELD]
    no_blot = ["OLD.blotted_at IS NOT NULL", "NEW.blotted_at IS NULL"]
    yield AuditLock("audit_entry_stays", ENTRIES, "UPDATE", " OR ".join([*moves, *fills, *no_blot]))
    yield AuditLock("audit_entry_is_kept", ENTRIES, "DELETE", _not_old(vendor) if knows_cuts else "TRUE")
    yield AuditLock("audit_seal_stays", SEALS, "UPDATE", "TRUE")
    yield AuditLock("audit_seal_is_kept", SEALS, "DELETE", SEAL_NEEDED if knows_cuts else "TRUE")
    if knows_cuts:
        yield AuditLock("audit_cut_is_old", CUTS, "INSERT", CUTS_TOO_MUCH)
        yield AuditLock("audit_cut_stays", CUTS, "UPDATE", "TRUE")
        yield AuditLock("audit_cut_is_kept", CUTS, "DELETE", "TRUE")


SEAL_NEEDED = (
    f"NOT EXISTS (SELECT 1 FROM {CUTS} WHERE business_id = OLD.business_id AND position >= OLD.position) "
    f"OR EXISTS (SELECT 1 FROM {ENTRIES} WHERE id = OLD.entry_id)"
)
CUTS_TOO_MUCH = (
    f"EXISTS (SELECT 1 FROM {SEALS} JOIN {ENTRIES} e ON e.id = entry_id "
    f"WHERE {SEALS}.business_id = NEW.business_id AND position <= NEW.position AND e.at >= NEW.before)"
)


def _not_old(vendor: str) -> str:
    """Of an entry: no cut covers it, or it is younger than any cut may reach."""
    years = f"{LEAST_YEARS} years"
    line = f"now() - interval '{years}'" if vendor == "postgresql" else f"datetime('now', '-{years}')"
    covered = (
        f"SELECT 1 FROM {SEALS} s JOIN {CUTS} c ON c.business_id = s.business_id AND c.position >= s.position "
        "WHERE s.entry_id = OLD.id AND OLD.at < c.before"
    )
    return f"OLD.at >= {line} OR NOT EXISTS ({covered})"


def put_on(connection: BaseDatabaseWrapper, lock: AuditLock) -> None:
    """Put one lock on."""
    before = f"BEFORE {lock.event} ON {lock.table} FOR EACH ROW"
    with connection.cursor() as cursor:
        if connection.vendor == "sqlite":
            refuse = f"SELECT RAISE(ABORT, '{STAYS}');"
            cursor.execute(f"CREATE TRIGGER {lock.name} {before} WHEN {lock.when} BEGIN {refuse} END")
            return
        # because: PostgreSQL lets a trigger's own WHEN ask no other table
        refuse = f"IF {lock.when} THEN RAISE EXCEPTION '{STAYS}' USING ERRCODE = 'check_violation'; END IF;"
        row = "OLD" if lock.event == "DELETE" else "NEW"
        cursor.execute(
            f"CREATE OR REPLACE FUNCTION {lock.name}() RETURNS trigger LANGUAGE plpgsql "
            f"AS $$ BEGIN {refuse} RETURN {row}; END $$"
        )
        cursor.execute(f"CREATE TRIGGER {lock.name} {before} EXECUTE FUNCTION {lock.name}()")


def _take_off(connection: BaseDatabaseWrapper, lock: AuditLock) -> None:
    on_table = f" ON {lock.table}" if connection.vendor == "postgresql" else ""
    with connection.cursor() as cursor:
        cursor.execute(f"DROP TRIGGER IF EXISTS {lock.name}{on_table}")
        if connection.vendor == "postgresql":
            cursor.execute(f"DROP FUNCTION IF EXISTS {lock.name}()")

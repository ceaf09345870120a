"""The database's own locks on what was issued: triggers that refuse to change it, whoever asks.

They stand under the services, which refuse first and in better words. Deleting is not locked here: the demo is wiped
and the test database emptied by DELETE, and neither database lets a trigger tell that from a slip; the rows refuse it
(`stays.py`), and foreign keys hold an invoice that has lines.

A migration that alters one of these tables must take the locks away first and put them back last, because SQLite makes
such a table anew: `[RunPython(unlock_issued, lock_issued), ..., RunPython(lock_issued, unlock_issued)]`.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from django.apps.registry import Apps
from django.db.backends.base.base import BaseDatabaseWrapper
from django.db.backends.base.schema import BaseDatabaseSchemaEditor

from invoicing.domain.frozen_columns import INVOICE_STAYS, LINES_STAY, PAPERS_STAY, frozen_columns

HOLDS = "invoice_id IN (SELECT id FROM invoicing_invoice WHERE state = 'issued')"
LINE_TABLES = ("invoicing_invoiceline", "invoicing_documentamount")


@dataclass(frozen=True)
class Lock:
    """One trigger: before `event` on a row of `table` where `when` holds, refuse with `words`."""

    name: str
    table: str
    event: str
    when: str
    words: str


def lock_issued(apps: Apps, schema_editor: BaseDatabaseSchemaEditor) -> None:
    """Put the locks on; those that stand already are made anew."""
    unlock_issued(apps, schema_editor)
    fields = apps.get_model("invoicing", "Invoice")._meta.concrete_fields
    columns = [field.column for field in fields if field.column is not None]
    for lock in locks(columns, schema_editor.connection.vendor):
        for statement in _statements(lock, schema_editor.connection.vendor):
            schema_editor.execute(statement)


def unlock_issued(apps: Apps, schema_editor: BaseDatabaseSchemaEditor) -> None:
    """Take them away."""
    is_postgres = schema_editor.connection.vendor == "postgresql"
    for lock in locks([], schema_editor.connection.vendor):
        on_table = f" ON {lock.table}" if is_postgres else ""
        schema_editor.execute(f"DROP TRIGGER IF EXISTS {lock.name}{on_table}")
        if is_postgres:
            schema_editor.execute(f"DROP FUNCTION IF EXISTS {lock.name}()")


def missing_locks(connection: BaseDatabaseWrapper) -> list[str]:
    """The names of those that do not stand in the database."""
    where = "tgname FROM pg_trigger" if connection.vendor == "postgresql" else "name FROM sqlite_master"
    with connection.cursor() as cursor:
        cursor.execute(f"SELECT {where}")
        there = {name for (name,) in cursor.fetchall()}
    return [lock.name for lock in locks([], connection.vendor) if lock.name not in there]


def locks(columns: Sequence[str], vendor: str) -> Iterator[Lock]:
    """Every lock there is, for an invoice of these columns."""
    differs = "IS DISTINCT FROM" if vendor == "postgresql" else "IS NOT"
    changes = " OR ".join(f"OLD.{name} {differs} NEW.{name}" for name in frozen_columns(columns))
    invoice, papers = "invoicing_invoice", "invoicing_invoicepapers"
    yield Lock(
        "issued_invoice_stays", invoice, "UPDATE", f"OLD.state = 'issued' AND ({changes})", INVOICE_STAYS
    )
    yield Lock("papers_stay", papers, "UPDATE", "TRUE", PAPERS_STAY)
    for table in LINE_TABLES:
        short = table.removeprefix("invoicing_")
        changed = f"OLD.{HOLDS} OR NEW.{HOLDS}"
        yield Lock(f"issued_{short}_stays", table, "UPDATE", changed, LINES_STAY)
        yield Lock(f"issued_{short}_takes_no_more", table, "INSERT", f"NEW.{HOLDS}", LINES_STAY)


def _statements(lock: Lock, vendor: str) -> list[str]:
    before = f"BEFORE {lock.event} ON {lock.table} FOR EACH ROW"
    if vendor == "sqlite":
        refuse = f"SELECT RAISE(ABORT, '{lock.words}');"
        return [f"CREATE TRIGGER {lock.name} {before} WHEN {lock.when} BEGIN {refuse} END"]
    # A WHEN of PostgreSQL may not look into another table, so the function does.
    refuse = f"RAISE EXCEPTION '{lock.words}' USING ERRCODE = 'check_violation';"
    body = f"BEGIN IF {lock.when} THEN {refuse} END IF; RETURN NEW; END"
    return [
        f"CREATE FUNCTION {lock.name}() RETURNS trigger LANGUAGE plpgsql AS $$ {body} $$",
        f"CREATE TRIGGER {lock.name} {before} EXECUTE FUNCTION {lock.name}()",
    ]

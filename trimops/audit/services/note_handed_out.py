"""Data of a farm or a person left the house by somebody's hand: an entry of the trail says so."""

from datetime import datetime

from django.db import router

from trimops.accounts.models import Membership
from trimops.audit.domain.canonical import canonical
from trimops.audit.domain.entry_kinds import EntryKind
from trimops.audit.models import AuditEntry
from trimops.audit.note_writes import entry_of, put_entries, row_at
from trimops.tenancy.models import TenantModel
from trimops.watch.doing import who_does_it


def note_handed_out(*, row: TenantModel | Membership, words: str, at: datetime) -> None:
    """`row` is the farm or person whose data it was, `words` what of it ("everything", "tables (CSV)")."""
    values = {field.attname: getattr(row, field.attname) for field in row._meta.concrete_fields}
    said = canonical({"handed_out": words})
    entry = entry_of(who_does_it(), at, row_at(type(row), values), EntryKind.HANDED_OUT, after=said)
    put_entries([entry], router.db_for_write(AuditEntry))

"""Entries of the trail are written: told by `trimops.tenancy.told_writes`, in the transaction of the writing itself."""

import secrets
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from functools import cache

from django.db import connections
from django.db.models import Model
from django.utils import timezone

from trimops.accounts.models import Membership
from trimops.audit.audited import AUDITED, Kept
from trimops.audit.domain.canonical import canonical
from trimops.audit.domain.digests import Content, Facts, changed_alone, content_digest, entry_digest
from trimops.audit.domain.entry_kinds import EntryKind
from trimops.audit.models.audit_locks import ENTRIES, FACTS, HELD
from trimops.audit.unaudited import is_unaudited
from trimops.tenancy.told_writes import Written
from trimops.watch.doing import Doing, who_does_it

Values = Mapping[str, object]
COLUMNS = (*(name for name in FACTS if name != "id"), *HELD)
_MARKS = ", ".join(["%s"] * len(COLUMNS))
_NAMES = ", ".join(f'"{name}"' for name in COLUMNS)
INSERT = f"INSERT INTO {ENTRIES} ({_NAMES}) VALUES ({_MARKS})"
_SAID = {"business_id": "business", "by_id": "by"}
MASKED, MASKED_NEW = "(not kept here)", "(changed)"


@dataclass
class RowAt:
    """Which row of which business, and the rows that it hangs on."""

    business: int
    what: str
    pk: int
    under: str
    beside: str


def note_writes(model: type[Model], rows: Sequence[Written], using: str) -> None:
    """One entry for each row that differs from what it was. They come in the order of the rows."""
    if is_unaudited():
        return
    kept = AUDITED[model._meta.label_lower]
    # because: it is the moment of the writing, whatever day the service was told to write about
    at, doing = timezone.now(), who_does_it()
    entries = [_entry(model, kept, row, doing, at) for row in rows if _differs(kept, row)]
    put_entries(entries, using)


def put_entries(entries: Sequence[tuple[Facts, Content]], using: str) -> None:
    """Straight SQL: it is done for every row that is written, and the ORM would take three times as long."""
    if not entries:
        return
    connection = connections[using]
    adapt = connection.ops.adapt_datetimefield_value
    rows = []
    for facts, content in entries:
        columns = {**vars(facts), **vars(content), "digest": entry_digest(facts), "at": adapt(facts.at)}
        rows.append(tuple(columns[_SAID.get(name, name)] for name in COLUMNS))
    with connection.cursor() as cursor:
        if len(rows) == 1:
            cursor.execute(INSERT, rows[0])
        else:
            cursor.executemany(INSERT, rows)


def entry_of(
    doing: Doing, at: datetime, row: RowAt, kind: EntryKind, before: str = "", after: str = ""
) -> tuple[Facts, Content]:
    """An entry with its hash of what it holds, salted anew."""
    content = Content(before, after, secrets.token_hex(16), doing.seen_from, doing.session)
    return Facts(
        row.business, at, doing.by, doing.via[:120], doing.request[:64], kind.value, row.what, row.pk, row.under,
        row.beside, content_digest(content),
    ), content  # fmt: skip


def row_at(model: type[Model], values: Values) -> RowAt:
    """Where a row of these values stands."""
    label, pk = model._meta.label_lower, model._meta.pk
    assert pk is not None
    kept = AUDITED[label]
    return RowAt(
        _business_of(kept, values),
        label,
        int(str(values[pk.attname])),
        _place(model, kept.under, values),
        _place(model, kept.beside, values),
    )


def _differs(kept: Kept, row: Written) -> bool:
    if row.before is None or row.after is None:
        return True
    _, after = changed_alone(row.before, row.after)
    return bool(after.keys() - kept.quiet)


def _entry(model: type[Model], kept: Kept, row: Written, doing: Doing, at: datetime) -> tuple[Facts, Content]:
    now: Values = row.after if row.after is not None else row.before or {}
    before, after = _told(row)
    new = MASKED_NEW if row.before is not None else MASKED
    return entry_of(
        doing, at, row_at(model, now), _kind_of(row), _text(kept, before, MASKED), _text(kept, after, new)
    )


def _kind_of(row: Written) -> EntryKind:
    if row.before is None:
        return EntryKind.ADDED
    return EntryKind.TAKEN_AWAY if row.after is None else EntryKind.CHANGED


def _told(row: Written) -> tuple[Values, Values]:
    if row.before is not None and row.after is not None:
        before, after = changed_alone(row.before, row.after)
        return before, after
    return _filled(row.before), _filled(row.after)


def _filled(values: Values | None) -> Values:
    """Of a whole row what is empty need not be said."""
    return {name: value for name, value in (values or {}).items() if value is not None and value != ""}


def _text(kept: Kept, values: Values, mask: str) -> str:
    told = {
        name: mask if name in kept.masked and value is not None else value for name, value in values.items()
    }
    return canonical(told) if told else ""


def _business_of(kept: Kept, values: Values) -> int:
    key = int(str(values[kept.business]))
    if kept.business == "membership_id":
        return int(Membership.objects.values_list("business_id", flat=True).get(pk=key))
    return key


def _place(model: type[Model], columns: Sequence[str], values: Values) -> str:
    """The first of these columns that is filled, as "app.model:id"; empty where none is."""
    for column in columns:
        if (key := values.get(column)) is not None:
            return f"{_label_of(model, column)}:{key}"
    return ""


@cache
def _label_of(model: type[Model], column: str) -> str:
    related = model._meta.get_field(column.removesuffix("_id")).related_model
    assert isinstance(related, type)
    return str(related._meta.label_lower)

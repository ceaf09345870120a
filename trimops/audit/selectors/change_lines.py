"""Entries in plain words: labels of columns, choices by their names, other rows by theirs, times in the zone."""

import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from itertools import groupby

from django.apps import apps
from django.core.exceptions import FieldDoesNotExist
from django.db import models
from django.utils import timezone

from trimops.accounts.models import User
from trimops.audit.domain.entry_kinds import EntryKind
from trimops.audit.models import AuditEntry
from trimops.jobs import Job
from trimops.kernel.scope import Scope
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet

NOTHING, NUMBER = "nothing", "no. "
EMPTY = frozenset({NOTHING, "no", "0", ""})
# Columns that say nothing to a reader: keys, and where the row itself stands.
UNSAID = frozenset({"id", "business_id", "uid", "client_id", "version", "record", "after", "key", "sha256"})
UNSAID |= {"changed_at", "calendar_sequence", "shown_since", "place_sequence", "zone_map"}
NAMED_BY = ("name", "number", "description")
LONGEST = 300
# How amounts are kept (other decimals have other places), and the rows whose amounts are in the business's own money;
# of others the currency is told where the entry says it.
MONEY_PLACES, MONEY_DIGITS = 4, (14, 16)
IN_OWN_MONEY = frozenset(
    f"invoicing.{name}" for name in ("pricelist", "price", "travelband", "agreement", "journey")
)
Values = Mapping[str, object]
Names = Mapping[tuple[type[models.Model], int], str]


@dataclass(frozen=True)
class ChangedColumn:
    """One column in words: what it was ("" where it is not known or was not there) and what it is."""

    label: str
    was: str
    now: str

    @property
    def says_something(self) -> bool:
        """Of a whole row: what is no, nothing or only a number of another row need not be read."""
        text = self.now or self.was
        return text not in EMPTY and not text.startswith((NUMBER, "0.00"))


@dataclass(frozen=True)
class ChangeLine:
    """One entry in words; `thing` is what kind of row it is, with its name where it has one."""

    entry: AuditEntry
    thing: str
    columns: tuple[ChangedColumn, ...]


@dataclass(frozen=True)
class ChangeAct:
    """What one person did in one go, one after another. `way` is by what, where that says anything."""

    at: datetime
    who: str
    way: str
    seen_from: str
    lines: tuple[ChangeLine, ...]


def change_acts(scope: Scope, entries: Iterable[AuditEntry], currency: str) -> list[ChangeAct]:
    """Of entries with the newest first; `currency` is the business's own. A query for each kind of other rows that is
    named, however many entries there are.
    """
    told = [(entry, _values(entry.before), _values(entry.after)) for entry in entries]
    names = _names(scope, told)
    acts = []
    for (by, via, _, _), group in groupby(told, key=lambda each: _act_of(each[0])):
        lines = [_line(entry, before, after, names, currency) for entry, before, after in group]
        last = lines[0].entry
        who = str(last.by) if by else "The program"
        # because: an act reads in the order in which it was done
        acts.append(ChangeAct(last.at, who, _way(via), last.seen_from, tuple(reversed(lines))))
    return acts


def _act_of(entry: AuditEntry) -> tuple[int | None, str, str, datetime]:
    return entry.by_id, entry.via, entry.request, entry.at.replace(microsecond=0)


def _line(entry: AuditEntry, before: Values, after: Values, names: Names, currency: str) -> ChangeLine:
    model = _model_of(entry.what)
    name = names.get((model, entry.row_id), "") if model else ""
    columns = _columns(entry, before, after, names, currency)
    kept = columns if entry.kind == EntryKind.CHANGED else (each for each in columns if each.says_something)
    return ChangeLine(entry, f"{_thing(entry.what)} {name}".strip(), tuple(kept))


def _values(text: str) -> dict[str, object]:
    return dict(json.loads(text)) if text else {}


def _model_of(what: str) -> type[models.Model] | None:
    try:
        return apps.get_model(what)
    except LookupError:
        # because: an entry outlives the version of the program that knew its kind of row
        return None


def _thing(what: str) -> str:
    model = _model_of(what)
    words = str(model._meta.verbose_name) if model else what.partition(".")[2]
    return words[:1].upper() + words[1:]


def _way(via: str) -> str:
    kind, _, name = via.partition(" ")
    if kind == "errand":
        return f"by itself: {Job(name).label}" if name in set(Job) else "by itself"
    if kind == "command":
        return f"by the command {name}"
    return "by another program" if ", token " in via else ""


def _columns(
    entry: AuditEntry, before: Values, after: Values, names: Names, own_currency: str
) -> Iterator[ChangedColumn]:
    model = _model_of(entry.what)
    own = own_currency if entry.what in IN_OWN_MONEY else ""
    currency = str(after.get("currency") or before.get("currency") or own)
    for name in dict.fromkeys((*before, *after)):
        if name in UNSAID:
            continue
        field = _field(model, name)
        was = _words(field, before.get(name), names, currency) if name in before else ""
        now = _words(field, after.get(name), names, currency) if name in after else ""
        label = str(field.verbose_name) if field else name.replace("_", " ")
        yield ChangedColumn(label[:1].upper() + label[1:], was, now)


def _field(model: type[models.Model] | None, name: str) -> "models.Field[object, object] | None":
    if model is None:
        return None
    try:
        return model._meta.get_field(name.removesuffix("_id"))  # type: ignore[return-value]
    except FieldDoesNotExist:
        return None


def _words(field: "models.Field[object, object] | None", value: object, names: Names, currency: str) -> str:
    if value is None or value == "":
        return NOTHING
    if isinstance(field, models.ForeignKey):
        return names.get((field.related_model, int(str(value))), f"{NUMBER}{value}")
    if isinstance(value, bool):
        return "yes" if value else "no"
    if field is not None and field.flatchoices:
        return str(dict(field.flatchoices).get(value, value))
    if isinstance(field, models.DateTimeField):
        at = timezone.localtime(datetime.fromisoformat(str(value)))
        return f"{at.day} {at:%b %Y, %H:%M}"
    if isinstance(field, models.DateField):
        on = date.fromisoformat(str(value))
        return f"{on.day} {on:%b %Y}"
    if isinstance(field, models.TimeField):
        return str(value)[:5]
    if isinstance(field, models.DecimalField):
        is_money = field.decimal_places == MONEY_PLACES and field.max_digits in MONEY_DIGITS
        return _plain_number(str(value), is_money=is_money, currency=currency)
    return _short(value)


def _plain_number(text: str, *, is_money: bool, currency: str) -> str:
    """12.5000 is 12.50 of money, else 12.5."""
    whole, _, places = text.partition(".")
    kept = places.rstrip("0")
    if is_money:
        return f"{whole}.{kept.ljust(2, '0')} {currency}".strip()
    return f"{whole}.{kept}" if kept else whole


def _short(value: object) -> str:
    if value in ([], {}):
        return NOTHING
    if isinstance(value, list) and all(isinstance(each, str) for each in value):
        return ", ".join(value)
    if isinstance(value, dict) and not any(isinstance(each, dict | list) for each in value.values()):
        told = {name.replace("_", " "): each for name, each in value.items() if each not in ("", None)}
        return ", ".join(f"{name} {each}" for name, each in told.items()) or NOTHING
    text = value if isinstance(value, str) else json.dumps(value, ensure_ascii=False)
    return text if len(text) <= LONGEST else f"{text[:LONGEST]} …"


def _names(scope: Scope, told: Iterable[tuple[AuditEntry, Values, Values]]) -> Names:
    """What the rows are called that the entries point to, where they are still there."""
    wanted: dict[type[models.Model], set[int]] = {}
    for entry, before, after in told:
        if model := _model_of(entry.what):
            wanted.setdefault(model, set()).add(entry.row_id)
        for name, value in (*before.items(), *after.items()):
            field = _field(_model_of(entry.what), name)
            if isinstance(field, models.ForeignKey) and value is not None and name not in UNSAID:
                wanted.setdefault(field.related_model, set()).add(int(str(value)))
    return {(model, pk): name for model, pks in wanted.items() for pk, name in _names_of(scope, model, pks)}


def _names_of(scope: Scope, model: type[models.Model], pks: set[int]) -> Iterator[tuple[int, str]]:
    there = {field.name for field in model._meta.concrete_fields}
    column = next((name for name in NAMED_BY if name in there), None)
    if column is None or not (model is User or issubclass(model, TenantModel)):
        return
    rows = model._default_manager.filter(pk__in=pks)
    if isinstance(rows, TenantQuerySet):
        rows = rows.within(scope)
    yield from ((pk, str(name)) for pk, name in rows.values_list("pk", column) if name)

"""What any table holds of one person, found by the tables' own columns, so that a new table is never forgotten."""

import re
from collections.abc import Iterator
from datetime import date, time
from decimal import Decimal
from functools import reduce
from itertools import islice
from operator import or_
from uuid import UUID

from django.apps import apps
from django.db.models import BinaryField, CharField, Field, ForeignKey, Model, Q, QuerySet

from farms.models import Contact
from trimops.accounts.models import Membership, User
from trimops.kernel.scope import Scope
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet

SECRET = re.compile(r"secret|hash|digest|password|token_key|salt|sha256|session|^chain$|^code$|^key$")
"""Columns that open or prove something. A file that holds them would be worth stealing."""
PAPERS = frozenset({"issuedreport", "referralletter"})
"""Whole papers stand in their column `content`; that they were issued is told, not what is on them."""
SECOND_STEP = "mfa"
"""Its rows hold the secrets of the second step in one column; that there is one is told by the page of sign-ins."""
OF_THE_OFFICE = {
    "heldhour": frozenset({"moved_visit_id", "moved_van_id", "moved_start"}),
    "visitevent": frozenset({"note"}),
}
"""Columns of a farm's rows that may speak of other farms: not for the farm's own people."""
IN_EVERY_BUSINESS = ("id", "name", "email")
"""Of an account, what each business knows that the person was asked into."""
AT_ONCE = 2_000

Row = dict[str, object]
Tables = Iterator[tuple[str, list[Row]]]


def rows_of_person(scope: Scope, user: User) -> Tables:
    """Table by table of the scope, the rows that name the person in any column, newest first, at most `AT_ONCE` at a
    time. A query a table. Within a farm's scope no more than its own people may see."""
    for model in apps.get_models():
        if issubclass(model, TenantModel):
            yield from _naming(model, scope, User, user)


def rows_of_contact(scope: Scope, contact: Contact) -> Tables:
    """The same of somebody at a farm, who signs in nowhere."""
    for model in apps.get_models():
        if issubclass(model, TenantModel):
            yield from _naming(model, scope, Contact, contact)


def rows_of_sign_in(membership: Membership, *, is_asked_by_self: bool) -> Tables:
    """What the tables of signing in hold of the person: the account, this membership, sessions, programs.

    Nothing of a membership elsewhere: another business is none of this one's owner's affair. Nor are the sign-ins of
    somebody who has a place elsewhere, or was asked in here and has not come.
    """
    user = membership.user
    elsewhere = Membership.objects.filter(user=user).exclude(pk=membership.pk)
    is_whole = is_asked_by_self or (membership.joined_at is not None and not elsewhere.exists())
    account = told(user)
    yield "account", [account if is_whole else {name: account[name] for name in IN_EVERY_BUSINESS}]
    yield "membership", [told(membership)]
    if is_whole:
        yield from _sign_ins(membership)


def _sign_ins(membership: Membership) -> Tables:
    user = membership.user
    for model in apps.get_models():
        names = _names_of(model, User)
        if issubclass(model, TenantModel) or model._meta.app_label == SECOND_STEP or "user" not in names:
            continue
        rows: QuerySet[Model] = model._default_manager.filter(user=user)
        if model is Membership:
            continue
        if _names_of(model, Membership):
            rows = rows.filter(membership=membership)
        if found := [told(row) for row in rows.order_by("pk")]:
            yield _title(model), found


def told(row: Model) -> Row:
    """A row's columns by name as JSON holds them, without those that open something and without bytes."""
    columns = [field for field in row._meta.concrete_fields if _is_told(field)]
    return {field.attname: _plain(getattr(row, field.attname)) for field in columns}


def _naming(model: type[TenantModel], scope: Scope, whom: type[Model], whose: Model) -> Tables:
    names = _names_of(model, whom)
    if not names:
        return
    hidden = (
        OF_THE_OFFICE.get(str(model._meta.model_name), frozenset()) if scope.is_farm_client else frozenset()
    )
    columns = [
        field.attname
        for field in model._meta.concrete_fields
        if _is_told(field) and field.attname not in hidden
    ]
    wanted = reduce(or_, (Q(**{name: whose}) for name in names))
    rows: TenantQuerySet[TenantModel] = model._default_manager.all()
    found = iter(rows.within(scope).filter(wanted).order_by("-pk").values(*columns).iterator(AT_ONCE))
    while some := list(islice(found, AT_ONCE)):
        told_rows: list[Row] = []
        for row in some:
            named_as = [name for name in names if row.get(f"{name}_id") == whose.pk]
            told_rows.append({"named_as": named_as, **{name: _plain(value) for name, value in row.items()}})
        yield _title(model), told_rows


def _names_of(model: type[Model], whom: type[Model]) -> list[str]:
    return [
        field.name
        for field in model._meta.concrete_fields
        if isinstance(field, ForeignKey) and field.related_model is whom
    ]


def _is_told(field: "Field[object, object]") -> bool:
    name, model = field.attname, field.model._meta.model_name
    is_hash_or_paper = name == "content" and (isinstance(field, CharField) or model in PAPERS)
    return not isinstance(field, BinaryField) and not SECRET.search(name) and not is_hash_or_paper


def _title(model: type[Model]) -> str:
    return str(model._meta.verbose_name_plural)


def _plain(value: object) -> object:
    if isinstance(value, date | time):
        return value.isoformat()
    return str(value) if isinstance(value, Decimal | UUID) else value

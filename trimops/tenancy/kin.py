"""Reading what hangs together with a row that was already read: its parents, itself again.

Django follows a foreign key (`visit.farm`), re-reads a row (`refresh_from_db`) and checks a chosen parent
(`full_clean`) through the model's *base* manager. For a tenant model that manager reads within the business of the
row it starts from. So these work untouched, and a key that points into another business finds nothing.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from typing import Any

from django.db import models
from django.db.models.base import ModelBase

from trimops.kernel.scope import Scope
from trimops.tenancy.querysets import TenantQuerySet
from trimops.tenancy.tables import is_tenant_model

_checked: ContextVar[Scope | None] = ContextVar("trimops_checked_scope", default=None)


@contextmanager
def parents_within(scope: Scope) -> Iterator[None]:
    """Inside, base managers read within `scope`. Only for Django's own check of a row's foreign keys."""
    token = _checked.set(scope)
    try:
        yield
    finally:
        _checked.reset(token)


class KinManager(models.Manager[Any]):
    """The base manager of every tenant model."""

    _hints: dict[str, Any]

    def get_queryset(self) -> TenantQuerySet[Any]:
        rows: TenantQuerySet[Any] = TenantQuerySet(self.model, using=self._db, hints=self._hints)
        scope = _scope_of(self._hints.get("instance")) or _checked.get()
        return rows.within(scope) if scope else rows


def _scope_of(row: Any) -> Scope | None:
    """The scope of the row a query starts from, without reading anything from the database."""
    if not is_tenant_model(type(row)):
        return None
    business_id = row.__dict__.get("business_id")
    return None if business_id is None else Scope(business_id)


class TenantModelBase(ModelBase):
    """Gives each tenant model its `KinManager`.

    By metaclass, because `Meta.base_manager_name` is lost whenever a model writes a `Meta` of its own, and would
    otherwise put a manager into each migration.
    """

    @property
    def _base_manager(cls) -> Any:
        manager: Any = KinManager()
        manager.model, manager.name = cls, "_base_manager"
        return manager

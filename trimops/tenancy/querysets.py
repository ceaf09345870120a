"""The one entry point to a business's rows: `Model.objects.within(scope)`.

Nothing here is the lock; that is `trimops.tenancy.lock`, under Django's compilers. This class gives the key (`within`)
and mends the few places where Django itself needs more than a key.
"""

from typing import Any, Self, TypeVar

from django.core.exceptions import EmptyResultSet
from django.db import models
from django.db.models.query import RawQuerySet

from trimops.kernel.scope import Scope
from trimops.tenancy.lock import fit_lock
from trimops.tenancy.marks import WithinBusiness
from trimops.tenancy.query import TenantQuery
from trimops.tenancy.raw_query import LockedRawQuery
from trimops.tenancy.unscoped import unscoped

M = TypeVar("M", bound=models.Model, covariant=True)

fit_lock()


class TenantQuerySet(models.QuerySet[M]):
    """A queryset that cannot run until it has been through `within`."""

    def __init__(self, model: Any = None, query: Any = None, using: Any = None, hints: Any = None) -> None:
        super().__init__(model, query or TenantQuery(model), using, hints)

    def within(self, scope: Scope) -> Self:
        """This business's rows; for a farm client only those that lead to the farm.

        A model that does not say how it leads to a farm (`farm_path` is None) shows a farm client nothing.
        """
        if not isinstance(scope, Scope) or scope.business_id is None:
            raise TypeError("within() takes the Scope of one business")
        mine = self.filter(WithinBusiness.of(scope))
        if not scope.is_farm_client:
            return mine
        path = getattr(self.model, "farm_path", None)
        return mine.filter(**{path: scope.farm_id}) if path else mine.none()

    def locked(self) -> Self:
        """These rows, locked from the moment they are read until the transaction ends; what is read with them is not.

        No key: a row that only names one of them can be put down meanwhile. Whoever does so would wait for us, and we
        for what they hold.
        """
        return self.select_for_update(of=("self",), no_key=True)

    def only(self, *fields: Any) -> Self:
        # A row that does not know its business could not be followed, re-read or locked.
        return super().only(*fields, *([] if fields == (None,) else ["business"]))

    def defer(self, *fields: Any) -> Self:
        return super().defer(*[field for field in fields if field not in ("business", "business_id")])

    def delete(self) -> tuple[int, dict[str, int]]:
        """Django's collector follows the links of the rows with queries of its own, which carry no scope."""
        self._prove()
        with unscoped("the rows were proven; what hangs on them goes or protects them"):
            return super().delete()

    delete.alters_data = True  # type: ignore[attr-defined]
    delete.queryset_only = True  # type: ignore[attr-defined]

    def _prove(self) -> None:
        """Make the SQL once under the lock, subqueries and joins included, and throw it away."""
        rows: Any = self.all()
        rows.query.select_for_update = False
        try:
            rows.query.get_compiler(using=rows.db).as_sql()
        except EmptyResultSet:
            return

    def raw(
        self, raw_query: Any, params: Any = (), translations: Any = None, using: Any = None
    ) -> "RawQuerySet[Any]":
        rows = super().raw(raw_query, params=params, translations=translations, using=using)
        rows.query = LockedRawQuery(raw_query, rows.db, params=params)
        return rows

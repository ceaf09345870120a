"""The lock on the rows of a business. It sits where SQL is made, under everything that can ask for rows.

Why here. A list of forbidden methods forgets one (`exists`, `exclude`, `union`, a subquery, a related manager, the
next Django's new method), and a guarded `Query` class is shed whenever Django swaps classes on its way to UPDATE or
DELETE or starts from another model. But every query, whatever asked for it, becomes SQL through a compiler that the
connection hands out. So each compiler class is handed out with `_Locked` in front, for every database in use; this
is done on import, and `TenantModel` cannot be imported without it: no process has rows of a business and no lock.

What it asks, unless inside `unscoped`:
* the query starts from a tenant table: its WHERE must prove one scope (see `marks`);
* the query reaches a tenant table by a join: the table it comes from must be a tenant table too, for only there
  do foreign keys stay inside one business (a person may work for two);
* a farm client's query steps from one row to many: the row it steps from must itself be one farm's;
* SQL written by hand inside a query may not name a tenant table, nor stand in a query that starts from one.

In the same place whoever asked for it is told what was written (`told_writes`).
"""

from functools import cache
from typing import Any

from django.apps import apps
from django.db.backends.base.operations import BaseDatabaseOperations
from django.db.models.expressions import RawSQL
from django.db.models.sql.where import ExtraWhere

from trimops.tenancy.refuse_reading import refuse_hand_written, refuse_stray_joins, refuse_unscoped_root
from trimops.tenancy.told_writes import TELLERS
from trimops.tenancy.unscoped import is_unscoped


class _Locked:
    """Goes in front of a compiler class of Django's."""

    query: Any

    def as_sql(self, *args: Any, **kwargs: Any) -> Any:
        if _is_watched(self.query):
            refuse_unscoped_root(self.query)
        return super().as_sql(*args, **kwargs)  # type: ignore[misc]

    def get_from_clause(self) -> Any:
        # Ordering and select_related add their joins late; here the list of tables is final.
        if _is_watched(self.query):
            refuse_stray_joins(self.query)
        return super().get_from_clause()  # type: ignore[misc]

    def compile(self, node: Any) -> Any:
        if isinstance(node, RawSQL | ExtraWhere) and _is_watched(self.query):
            refuse_hand_written(self.query, node)
        return super().compile(node)  # type: ignore[misc]


@cache
def _locked(compiler: Any) -> Any:
    coats = (*TELLERS.get(compiler.__name__, ()), _Locked, compiler)
    return type(compiler.__name__, coats, {"__module__": compiler.__module__})


_hand_out = BaseDatabaseOperations.compiler


def _hand_out_locked(self: BaseDatabaseOperations, compiler_name: str) -> Any:
    compiler: Any = _hand_out(self, compiler_name)
    return _locked(compiler)


def fit_lock() -> None:
    """Put the lock on every connection of this process. Fitting it again changes nothing."""
    BaseDatabaseOperations.compiler = _hand_out_locked  # type: ignore[method-assign]


def _is_watched(query: Any) -> bool:
    """False inside `unscoped` and for the frozen models of a migration, which live in a registry of their own."""
    model = getattr(query, "model", None)
    return model is not None and model._meta.apps is apps and not is_unscoped()

"""Telling what was written, where SQL is made: no service can forget it, and no way of writing goes round it.

Whoever wants to know says of which models and which columns (`tell_writes`), and is then told of every row that an
INSERT, UPDATE or DELETE of Django's touches: `save`, `bulk_create`, `bulk_update`, `update`, `delete` and what a
delete takes with it all become such a statement. Not seen is SQL written by hand into a cursor.

* INSERT and DELETE return their rows (RETURNING, which both databases know): what is told is what the database holds,
  its defaults and clocks included.
* UPDATE reads the rows before, locked, and returns them after; the telling is in the same transaction as the writing.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from django.apps import apps
from django.core.exceptions import EmptyResultSet
from django.db import transaction
from django.db.models import Model, Q
from django.db.models.constants import OnConflict
from django.db.models.sql import Query
from django.db.models.sql.constants import MULTI

from trimops.tenancy.unscoped import unscoped

Row = dict[str, Any]
"""Values by the name of the attribute (`farm_id`, not `farm`), as a model's row would have them."""


@dataclass(frozen=True)
class Written:
    """One row: None `before` where it was added, None `after` where it was taken away.

    Of a change only the columns that the statement set are told, and those that are always wanted. `before` is empty
    where another process wrote the row in the very moment between reading and writing.
    """

    before: Row | None
    after: Row | None


Teller = Callable[[type[Model], Sequence[Written], str], None]


@dataclass(frozen=True)
class _Wanted:
    always: tuple[str, ...]
    never: frozenset[str]
    tell: Teller


_wanted: dict[type[Model], _Wanted] = {}


def tell_writes(
    model: type[Model], tell: Teller, *, always: Sequence[str], never: Sequence[str] = ()
) -> None:
    """From now on call `tell(model, rows, using)` inside each transaction that writes rows of `model`.

    `always` are attributes told of every row, `never` columns that are not even read.
    """
    pk = model._meta.pk
    assert pk is not None
    _wanted[model] = _Wanted(tuple(dict.fromkeys((pk.attname, *always))), frozenset(never), tell)


def told_models() -> frozenset[type[Model]]:
    """The models of whose rows somebody is told."""
    return frozenset(_wanted)


def _wanted_of(compiler: Any) -> _Wanted | None:
    model = compiler.query.model
    # because: the frozen models of a migration live in a registry of their own, and move what others have written
    return _wanted.get(model) if model is not None and model._meta.apps is apps else None


class _Telling:
    """Goes in front of a compiler class, with what the three of them share."""

    query: Any
    connection: Any
    using: Any
    _returned: list[Any]

    def _tell(self, wanted: _Wanted, rows: Sequence[Written]) -> None:
        if rows:
            wanted.tell(self.query.model, rows, self.connection.alias)

    def _whole(self, act: Callable[[], Any]) -> Any:
        """What is written and what is told of it stand or fall together."""
        if self.connection.in_atomic_block:
            return act()
        with transaction.atomic(using=self.connection.alias):
            return act()

    def _run_returning(self, fields: Sequence[Any]) -> list[Row] | None:
        """The rows that the statement returns; None where there is nothing to run."""
        compiler: Any = self
        try:
            sql, params = compiler.as_sql()
        except EmptyResultSet:
            return None
        if not sql:
            return None
        returning, more = self.connection.ops.return_insert_columns(fields)
        with self.connection.cursor() as cursor:
            cursor.execute(f"{sql} {returning}", (*params, *more))
            return self._read(fields, cursor.fetchall())

    def _read(self, fields: Sequence[Any], found: Any) -> list[Row]:
        compiler: Any = self
        table = self.query.model._meta.db_table
        converters = compiler.get_converters([field.get_col(table) for field in fields])
        rows = list(compiler.apply_converters(found, converters)) if converters else list(found)
        return [dict(zip([field.attname for field in fields], row, strict=True)) for row in rows]


class TellsInserts(_Telling):
    """In front of SQLInsertCompiler."""

    def execute_sql(self, returning_fields: Any = None) -> Any:
        wanted = _wanted_of(self)
        if wanted is None or not self.query.objs:
            return super().execute_sql(returning_fields)  # type: ignore[misc]
        return self._whole(lambda: self._insert(wanted, list(returning_fields or ())))

    def _insert(self, wanted: _Wanted, asked: list[Any]) -> Any:
        compiler: Any = self
        pk = self.query.model._meta.pk.attname
        fields = [field for field in _columns(self.query.model) if field.attname not in wanted.never]
        before = _rows_in_the_way(self, fields) if self.query.on_conflict == OnConflict.UPDATE else {}
        fields += [field for field in asked if field not in fields]
        compiler.returning_fields = fields
        rows: list[Row] = []
        with self.connection.cursor() as cursor:
            for sql, params in compiler.as_sql():
                cursor.execute(sql, params)
                rows += self._read(fields, cursor.fetchall())
        self._tell(wanted, [Written(before.get(row[pk]), _without(row, wanted.never)) for row in rows])
        return [tuple(row[field.attname] for field in asked) for row in rows] if asked else []


class TellsUpdates(_Telling):
    """In front of SQLUpdateCompiler."""

    def execute_sql(self, result_type: Any) -> Any:
        wanted = _wanted_of(self)
        if wanted is None:
            return super().execute_sql(result_type)  # type: ignore[misc]
        return self._whole(lambda: self._update(wanted))

    def _update(self, wanted: _Wanted) -> int:
        model = self.query.model
        told = {field.attname for field, _, _ in self.query.values} | set(wanted.always)
        fields = [field for field in _columns(model) if field.attname in told - wanted.never]
        pk = model._meta.pk.attname
        before = {row[pk]: row for row in _rows_before(self, fields)}
        after = self._run_returning(fields) or []
        # because: a row that came to match between the reading and the writing is told without what it was
        self._tell(wanted, [Written(before.get(row[pk], {}), row) for row in after])
        return len(after)


class TellsDeletes(_Telling):
    """In front of SQLDeleteCompiler."""

    def execute_sql(self, result_type: Any = MULTI, *args: Any, **kwargs: Any) -> Any:
        wanted = _wanted_of(self)
        if wanted is None:
            return super().execute_sql(result_type, *args, **kwargs)  # type: ignore[misc]
        return self._whole(lambda: self._delete(wanted))

    def _delete(self, wanted: _Wanted) -> int:
        fields = [field for field in _columns(self.query.model) if field.attname not in wanted.never]
        gone = self._run_returning(fields) or []
        self._tell(wanted, [Written(row, None) for row in gone])
        return len(gone)


def _rows_before(compiler: Any, fields: Sequence[Any]) -> list[Row]:
    """The rows that the statement is about to change, locked as it would lock them."""
    query = compiler.query.chain(klass=Query)
    query.clear_ordering(force=True)
    query.clear_select_clause()
    if query.alias_map and query.count_active_tables() > 1:
        # because: the outer side of a join cannot be locked, so the row is looked for inside and locked outside
        query.add_fields([query.model._meta.pk.attname])
        outer: Any = Query(query.model)
        outer.add_filter("pk__in", query)
        query = outer
    query.select_for_update = query.select_for_no_key_update = True
    return _found(compiler, query, fields)


def _rows_in_the_way(compiler: Any, fields: Sequence[Any]) -> dict[Any, Row]:
    """By its key each row that an upsert is about to overwrite."""
    query: Any = Query(compiler.query.model)
    names = [field.attname for field in compiler.query.unique_fields]
    same = [Q(**{name: getattr(row, name) for name in names}) for row in compiler.query.objs]
    query.add_q(Q(*same, _connector=Q.OR))
    query.select_for_update = query.select_for_no_key_update = True
    rows = _found(compiler, query, fields)
    return {row[query.model._meta.pk.attname]: row for row in rows}


def _found(compiler: Any, query: Any, fields: Sequence[Any]) -> list[Row]:
    names = [field.attname for field in fields]
    query.clear_select_clause()
    query.add_fields(names)
    with unscoped("what a statement is about to change is read by that statement's own conditions"):
        found = query.get_compiler(connection=compiler.connection).results_iter()
        return [dict(zip(names, row, strict=True)) for row in found]


def _columns(model: type[Model]) -> list[Any]:
    return [field for field in model._meta.concrete_fields if field.column is not None]


def _without(row: Row, names: frozenset[str]) -> Row:
    return {name: value for name, value in row.items() if name not in names}


TELLERS: dict[str, tuple[type, ...]] = {
    "SQLInsertCompiler": (TellsInserts,),
    "SQLUpdateCompiler": (TellsUpdates,),
    "SQLDeleteCompiler": (TellsDeletes,),
}
"""What goes in front of a compiler class of that name."""

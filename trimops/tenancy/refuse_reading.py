"""What a query may not read, asked by the lock when its SQL is made. Why these four: see `trimops.tenancy.lock`."""

import re
from typing import Any

from django.db.models import Model
from django.db.models.expressions import RawSQL
from django.db.models.fields.reverse_related import ForeignObjectRel
from django.db.models.sql.subqueries import AggregateQuery, InsertQuery, UpdateQuery
from django.db.models.sql.where import AND, NothingNode

from trimops.kernel.scope import Scope
from trimops.tenancy.errors import ScopeRequired
from trimops.tenancy.marks import proven_scopes
from trimops.tenancy.query import subqueries
from trimops.tenancy.refuse_writing import refuse_foreign_insert, refuse_moving
from trimops.tenancy.tables import tenant_tables

_WORDS = re.compile(r"\w+")


def refuse_unscoped_root(query: Any) -> None:
    """ScopeRequired unless the table the query starts from is free to all or its WHERE proves one scope."""
    if isinstance(query, InsertQuery):
        refuse_foreign_insert(query)
        return
    # An aggregate query reads from an inner one, which meets the lock by itself.
    if isinstance(query, AggregateQuery) or _is_surely_empty(query):
        return
    alias, table = _root(query)
    if table not in tenant_tables() or getattr(query, "hops", None) is not None:
        return
    scope = _one_scope(query, alias, table)
    if isinstance(query, UpdateQuery):
        refuse_moving(query, scope)


def _one_scope(query: Any, alias: str, table: str) -> Scope:
    scopes = proven_scopes(query.where, alias, table)
    if len(scopes) != 1:
        said = "two scopes are mixed" if scopes else "no scope was given"
        raise ScopeRequired(f"{table}: {said}. Read through {query.model.__name__}.objects.within(scope).")
    return next(iter(scopes))


def refuse_stray_joins(query: Any) -> None:
    """ScopeRequired if a tenant table is reached from a table all may share, or over one hidden from a farm."""
    tables = tenant_tables()
    root, root_table = _root(query)
    if query.extra_tables and {root_table, *query.extra_tables} & tables.keys():
        raise ScopeRequired(f"Tables added by hand: {', '.join(query.extra_tables)}.")
    hidden = _farm_hidden(query, root, root_table, tables)
    for alias, join in query.alias_map.items():
        parent = query.alias_map.get(getattr(join, "parent_alias", None))
        if parent is None or not query.alias_refcount[alias] or join.table_name not in tables:
            continue
        if parent.table_name not in tables:
            raise ScopeRequired(
                f"{join.table_name} is reached through {parent.table_name}, which all may share."
            )
        if isinstance(join.join_field, ForeignObjectRel) and parent.table_name in hidden:
            raise ScopeRequired(
                f"{join.table_name} is reached through {parent.table_name}, hidden from a farm."
            )


def _farm_hidden(query: Any, alias: str, table: str, tables: dict[str, type[Model]]) -> set[str]:
    """The tables whose rows are not one farm's, if the query is a farm client's; else none."""
    scopes = proven_scopes(query.where, alias, table) if table in tables else frozenset()
    if not any(scope.is_farm_client for scope in scopes):
        return set()
    hidden = {name for name, model in tables.items() if getattr(model, "farm_path", None) is None}
    for inner in subqueries(query.where):
        if any(hop._meta.db_table in hidden for hop in inner.hops or ()):
            raise ScopeRequired(f"{table}: an exclude() goes through a table hidden from a farm.")
    return hidden


def refuse_hand_written(query: Any, node: Any) -> None:
    """ScopeRequired if SQL text names a tenant table or stands in a query over one, whose conditions it can break."""
    said = node.sql if isinstance(node, RawSQL) else " ".join(node.sqls)
    named = {query.model._meta.db_table, *_WORDS.findall(said)} & tenant_tables().keys()
    if named:
        raise ScopeRequired(f"SQL written by hand beside {', '.join(sorted(named))}.")


def _is_surely_empty(query: Any) -> bool:
    """Whether `none()` was the last word, so that no table is read at all."""
    where = query.where
    is_plain_and = where.connector == AND and not where.negated
    return is_plain_and and any(isinstance(child, NothingNode) for child in where.children)


def _root(query: Any) -> tuple[str, str]:
    """Alias and table that FROM starts with. Not always the query's model: `exclude` trims the first joins off."""
    for alias, source in query.alias_map.items():
        if query.alias_refcount[alias]:
            return alias, source.table_name
    table = query.model._meta.db_table
    return table, table

"""The query of a tenant model: it vouches for the one subquery that Django writes on its own."""

from typing import Any

from django.db.models import Exists, Model
from django.db.models.sql import Query

from trimops.tenancy.tables import is_tenant_model


class TenantQuery(Query):
    """A query that remembers, in `hops`, that Django made it out of an `exclude()` over a to-many relation.

    `Farm.objects.within(scope).exclude(visits__state="wanted")` becomes NOT EXISTS (SELECT .. FROM visits WHERE
    visits.farm_id = farms.id AND ..). That inner SELECT carries no scope of its own, yet it is a join written another
    way: it only sees rows linked to the outer row. `hops` holds the models it was reached through; None means this
    is no such subquery and must show a scope of its own.
    """

    hops: tuple[type[Model], ...] | None = None

    def split_exclude(self, filter_expr: Any, can_reuse: Any, names_with_path: Any) -> Any:
        condition, needed_inner = super().split_exclude(filter_expr, can_reuse, names_with_path)
        hops = _hops(names_with_path)
        if hops is not None:
            for inner in subqueries(condition):
                if inner.model is self.model and inner.where and isinstance(inner, TenantQuery):
                    inner.hops = inner.hops or hops
        return condition, needed_inner


def _hops(names_with_path: Any) -> tuple[type[Model], ...] | None:
    """The models a path starts its to-many steps from, or None when it leaves the tenant tables on the way."""
    steps = [step for _, path in names_with_path for step in path]
    models = [step.from_opts.model for step in steps] + [step.to_opts.model for step in steps]
    if not all(is_tenant_model(model) for model in models):
        return None
    return tuple(step.from_opts.model for step in steps if step.m2m)


def subqueries(node: Any) -> list[TenantQuery]:
    """The queries inside `EXISTS (...)` anywhere under an expression or WHERE node."""
    found = [node.query] if isinstance(node, Exists) and isinstance(node.query, TenantQuery) else []
    # Not every node of a WHERE is an expression: `none()` leaves one that is not.
    for child in getattr(node, "get_source_expressions", list)():
        if child is not None and not isinstance(child, Query):
            found += subqueries(child)
    return found

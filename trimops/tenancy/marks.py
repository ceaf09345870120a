"""The mark of a scoped query, and the reading of it.

The mark *is* the filter: a leaf `business_id = 7` of a class of its own in the WHERE tree. A flag beside the query
could outlive the filter it speaks of (cleared WHERE, `scoped | everything`, a WHERE moved to another query); a leaf
cannot. Whatever Django does to the tree, `proven_scopes` asks the tree at the moment SQL is made.
"""

from typing import Any

from django.db.models import F
from django.db.models.lookups import Exact
from django.db.models.sql.where import AND, OR, XOR, WhereNode

from trimops.kernel.scope import Scope


class WithinBusiness(Exact):
    """`business_id = scope.business_id` on the root table of a query. Only `TenantQuerySet.within` makes one."""

    def __init__(self, lhs: Any, rhs: Any, scope: Scope | None = None) -> None:
        super().__init__(lhs, rhs)
        self.scope = scope

    @classmethod
    def of(cls, scope: Scope) -> "WithinBusiness":
        return cls(F("business_id"), scope.business_id, scope)

    def is_about(self, alias: str, table: str) -> bool:
        target = getattr(self.lhs, "target", None)
        return (
            target is not None
            and self.lhs.alias == alias
            and target.column == "business_id"
            and target.model._meta.db_table == table
        )


def proven_scopes(node: Any, alias: str, table: str) -> frozenset[Scope]:
    """The scopes of which at least one holds for every row the condition lets through; empty if none is proven.

    AND proves what any child proves, OR (and XOR, which needs one true side) only what every child proves,
    a negation proves nothing.
    """
    if isinstance(node, WithinBusiness):
        return frozenset({node.scope}) if node.scope and node.is_about(alias, table) else frozenset()
    if not isinstance(node, WhereNode) or node.negated:
        return frozenset()
    proofs = [proven_scopes(child, alias, table) for child in node.children]
    if node.connector == AND:
        return min(filter(None, proofs), key=len, default=frozenset())
    if node.connector in (OR, XOR) and all(proofs):
        return frozenset().union(*proofs)
    return frozenset()

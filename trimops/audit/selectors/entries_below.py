"""Entries by what they hang on: a finding hangs on a foot, the foot on a trim, the trim on a visit, that on a farm."""

from collections.abc import Collection, Iterable

from django.db.models import Q

from trimops.audit.models import AuditEntry
from trimops.kernel.scope import Scope
from trimops.tenancy.querysets import TenantQuerySet

DEPTH = 6
AT_ONCE = 500


def rows_below(scope: Scope, roots: Iterable[str], whats: Collection[str] | None = None) -> list[str]:
    """The rows `roots` ("visits.visit:12") and all that ever hung on them; with `whats` only of these kinds."""
    seen = set(roots)
    level = sorted(seen)
    for _ in range(DEPTH):
        found: set[str] = set()
        for start in range(0, len(level), AT_ONCE):
            part = level[start : start + AT_ONCE]
            rows = AuditEntry.objects.within(scope).filter(Q(under__in=part) | Q(beside__in=part))
            if whats is not None:
                rows = rows.filter(what__in=whats)
            found |= {f"{what}:{pk}" for what, pk in rows.order_by().values_list("what", "row_id").distinct()}
        level = sorted(found - seen)
        seen |= found
        if not level:
            break
    return sorted(seen)


def entries_about(scope: Scope, rows: Iterable[str]) -> "TenantQuerySet[AuditEntry]":
    """The entries of exactly these rows."""
    keys: dict[str, list[int]] = {}
    for row in rows:
        what, _, pk = row.partition(":")
        keys.setdefault(what, []).append(int(pk))
    named = Q()
    for what, pks in keys.items():
        named |= Q(what=what, row_id__in=pks)
    found = AuditEntry.objects.within(scope)
    return found.filter(named) if keys else found.none()

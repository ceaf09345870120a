"""The entries that a page or an address of the API shows, the newest first."""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import datetime

from trimops.audit.models import AuditEntry
from trimops.audit.selectors.entries_below import entries_about, rows_below
from trimops.kernel.scope import Scope
from trimops.tenancy.querysets import TenantQuerySet

Entries = TenantQuerySet[AuditEntry]


@dataclass(frozen=True)
class ChangeWish:
    """Which of all changes: of these kinds of rows, by that person (0: the program), from and until aware instants."""

    kinds: Collection[str] | None = None
    by: int | None = None
    since: datetime | None = None
    until: datetime | None = None


def changes_of(scope: Scope, thing: str, parts: Collection[str]) -> Entries:
    """Of one thing ("visits.visit:12") and all of the kinds `parts` that hangs on it, taken away since or not."""
    rows = rows_below(scope, [thing], parts)
    return entries_about(scope, rows).select_related("by").order_by("-at", "-id")


def all_changes(scope: Scope, wish: ChangeWish) -> Entries:
    """Of the whole business."""
    rows = AuditEntry.objects.within(scope).select_related("by").order_by("-at", "-id")
    if wish.kinds is not None:
        rows = rows.filter(what__in=wish.kinds)
    if wish.by is not None:
        rows = rows.filter(by_id=wish.by) if wish.by else rows.filter(by=None)
    if wish.since is not None:
        rows = rows.filter(at__gte=wish.since)
    return rows.filter(at__lt=wish.until) if wish.until is not None else rows

"""Invoices are locked in one order, so that no two who settle can wait for each other."""

from collections.abc import Iterable, Sequence

from invoicing.models import Invoice
from trimops.kernel.scope import Scope


def lock_invoices(*, scope: Scope, keys: Iterable[int], links: Sequence[str] = ()) -> dict[int, Invoice]:
    """The invoices and credit notes of those keys, locked in the order of their keys: all that settle do so first.

    What `links` name is read with them, and not locked.
    """
    rows = Invoice.objects.within(scope).filter(pk__in=set(keys)).order_by("pk")
    rows = rows.select_related(*links) if links else rows
    return {row.pk: row for row in rows.locked()}

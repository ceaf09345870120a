"""A farm is erased: drafts of invoices go, invoices that were issued stay."""

from dataclasses import dataclass

from django.db import transaction

from farms.models import Farm
from invoicing.models import Invoice
from trimops.kernel.scope import Scope


@dataclass(frozen=True)
class KeptInvoices:
    """How many drafts went, how many invoices stay, and the keys of the visits that these hang on."""

    drafts: int
    invoices: int
    visits: frozenset[int]


@transaction.atomic
def forget_drafts(*, farm: Farm) -> KeptInvoices:
    """Issued invoices are the business's books; the law wants them kept (in the UK for six years, from memory)."""
    rows = Invoice.objects.within(Scope(farm.business_id)).filter(farm=farm)
    drafts = rows.drafts().count()
    rows.drafts().delete()
    kept = list(rows.issued().values_list("visit_id", flat=True))
    return KeptInvoices(drafts, len(kept), frozenset(key for key in kept if key is not None))

"""A farm is erased: drafts of invoices go, invoices that were issued stay."""

from dataclasses import dataclass

from django.db import transaction

from farms.models import Farm
from invoicing.models import BilledWork, Invoice, InvoiceLine, LateWork
from invoicing.services.lock_invoices import lock_invoices
from trimops.kernel.scope import Scope


@dataclass(frozen=True)
class KeptInvoices:
    """How many drafts went, how many invoices stay, and the keys of the visits that these hang on."""

    drafts: int
    invoices: int
    visits: frozenset[int]


@transaction.atomic
def forget_drafts(*, farm: Farm) -> KeptInvoices:
    """Issued invoices are the business's books; the law wants them kept (in the UK for six years, from memory).

    With them stay their lines, papers, discounts on the whole and what was changed by hand, which explains them. The
    work they bill keeps its keys, without the words that name a cow.
    """
    scope = Scope(farm.business_id)
    rows = Invoice.objects.within(scope).filter(farm=farm)
    # because: one that is being issued just now is waited for, and is no draft any more then
    locked = lock_invoices(scope=scope, keys=rows.drafts().values_list("pk", flat=True))
    drafts = [key for key, row in locked.items() if not row.is_issued]
    rows.drafts().filter(pk__in=drafts).delete()
    claims = BilledWork.objects.within(scope).filter(visit__farm=farm)
    claims.filter(invoice__isnull=True).delete()
    claims.update(words="")
    claims.filter(line__isnull=True).update(not_billed_because="left off")
    LateWork.objects.within(scope).filter(visit__farm=farm).delete()
    return KeptInvoices(len(drafts), rows.issued().count(), _visits(scope, farm))


def _visits(scope: Scope, farm: Farm) -> frozenset[int]:
    """Those that an issued invoice, a line of one, or work on one points at."""
    issued = Invoice.objects.within(scope).filter(farm=farm).issued()
    keys = {*issued.values_list("visit_id", flat=True)}
    keys |= {*InvoiceLine.objects.within(scope).filter(invoice__in=issued).values_list("visit_id", flat=True)}
    keys |= {*BilledWork.objects.within(scope).filter(invoice__in=issued).values_list("visit_id", flat=True)}
    return frozenset(key for key in keys if key is not None)

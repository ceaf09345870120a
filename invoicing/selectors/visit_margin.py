"""What an invoice's work brought, what its material cost, and what is left. For the staff, never for the farm."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from django.db.models import Q, Sum

from invoicing.domain.minor_units import minor_digits
from invoicing.models import Invoice
from trimops.kernel.money import round_money
from visits.models import Visit
from visits.selectors.kit.visit_materials import visit_materials


@dataclass(frozen=True)
class VisitMargin:
    """All without tax, in the invoice's currency. `brought`: its net less what was credited of it.

    Not `is_known`: some of the material has no price in the ledger yet. `also_on`: other papers that bill work of these
    visits; what they bring is not in it.
    """

    brought: Decimal
    material: Decimal
    is_known: bool
    also_on: Sequence[Invoice]

    @property
    def left(self) -> Decimal:
        return self.brought - self.material


def visit_margin(invoice: Invoice, visits: Sequence[Visit]) -> VisitMargin | None:
    """Of a draft or an issued invoice and the visits that it bills (`visits_billed`). Eight queries at most.

    None for a credit note, for another currency than the stock is bought in, and where nothing that was used is in the
    ledger: then nothing can be said.
    """
    if invoice.is_credit_note or invoice.currency != invoice.business.currency or not visits:
        return None
    used = [found for found in visit_materials(invoice.scope, visits).values() if found.lines]
    if not used:
        return None
    digits = minor_digits(invoice.currency)
    material = sum((found.cost for found in used), Decimal(0))
    return VisitMargin(
        brought=round_money(invoice.net - _credited(invoice), digits),
        material=round_money(material, digits),
        is_known=all(found.is_known for found in used),
        also_on=_also_on(invoice, visits),
    )


def _credited(invoice: Invoice) -> Decimal:
    notes = Invoice.objects.within(invoice.scope).issued().credit_notes().filter(corrects=invoice)
    total = notes.aggregate(sum=Sum("net"))["sum"] or Decimal(0)
    return round_money(total, 4)


def _also_on(invoice: Invoice, visits: Sequence[Visit]) -> list[Invoice]:
    rows = Invoice.objects.within(invoice.scope).bills().exclude(pk=invoice.pk)
    rows = rows.filter(Q(visit__in=visits) | Q(billed_work__visit__in=visits, billed_work__holds=True))
    return list(rows.distinct().order_by("pk"))

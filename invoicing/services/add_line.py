"""A line is put on a draft by hand."""

from dataclasses import dataclass
from decimal import Decimal

from django.db import transaction
from django.db.models import Max

from invoicing.domain.amounts import line_net
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.pricing import PriceItem
from invoicing.models import Invoice, InvoiceLine, TaxRate
from invoicing.services.open_draft import ChangeRefused, Hand, keep_edit, open_draft
from invoicing.services.total_draft import total_draft


@dataclass(frozen=True)
class HandLine:
    """What is billed besides the work; `tax` is the rate that it carries."""

    description: str
    quantity: Decimal
    unit_price: Decimal
    tax: TaxRate


@transaction.atomic
def add_line(*, invoice: Invoice, line: HandLine, hand: Hand) -> Invoice:
    """Put the line at the end of the draft; drafting anew leaves it. ChangeRefused."""
    draft = open_draft(invoice=invoice, hand=hand)
    if not line.description.strip():
        raise ChangeRefused("Say what the line is for.")
    if line.quantity <= 0 or line.unit_price < 0:
        raise ChangeRefused(
            "How many must be above nought, the price not below: a discount is taken off instead."
        )
    rows = InvoiceLine.objects.within(draft.scope).filter(invoice=draft)
    row = _row(draft, line, (rows.aggregate(last=Max("position"))["last"] or 0) + 1)
    row.why = f"put in by hand: {hand.reason.strip()}"[:200]
    row.full_clean()
    row.save()
    keep_edit(invoice=draft, hand=hand, what=f"“{row.description}” put in")
    return total_draft(invoice=draft)


def _row(draft: Invoice, line: HandLine, position: int) -> InvoiceLine:
    return InvoiceLine(
        business_id=draft.business_id,
        invoice=draft,
        position=position,
        item=PriceItem.OTHER.value,
        description=line.description.strip(),
        quantity=line.quantity,
        unit=PriceItem.OTHER.unit,
        unit_price=line.unit_price,
        tax_category=line.tax.category,
        tax_percent=line.tax.percent,
        tax_reason=line.tax.reason,
        tax_reason_code=line.tax.reason_code,
        net=line_net(line.quantity, line.unit_price, minor_digits(draft.currency)),
        is_by_hand=True,
    )

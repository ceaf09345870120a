"""The amounts of an invoice reckoned anew from what is kept of it."""

from collections.abc import Sequence
from dataclasses import dataclass

from invoicing.domain.amounts import AmountLine, InvoiceAmounts, RoundingRule, WholeAmount, invoice_amounts
from invoicing.domain.minor_units import minor_digits
from invoicing.models import DocumentAmount, Invoice, InvoiceLine
from trimops.kernel.scope import Scope


@dataclass(frozen=True)
class KeptRows:
    """The lines of an invoice, and what was taken off or added on the whole."""

    lines: Sequence[InvoiceLine]
    whole: Sequence[DocumentAmount]


def kept_rows(invoice: Invoice) -> KeptRows:
    """As they are now, in their order."""
    scope = Scope(invoice.business_id)
    return KeptRows(
        list(InvoiceLine.objects.within(scope).filter(invoice=invoice)),
        list(DocumentAmount.objects.within(scope).filter(invoice=invoice)),
    )


def kept_amounts(invoice: Invoice, rows: KeptRows | None = None) -> InvoiceAmounts:
    """All amounts reckoned anew from the lines kept (`rows`, if read already), by the invoice's own rounding rule."""
    kept = rows or kept_rows(invoice)
    return amounts_of(invoice, kept.lines, kept.whole)


def amounts_of(
    invoice: Invoice, lines: Sequence[InvoiceLine], whole: Sequence[DocumentAmount]
) -> InvoiceAmounts:
    """The amounts of an invoice of these lines and these discounts and charges on the whole."""
    return invoice_amounts(
        [amount_line(row) for row in lines],
        [whole_amount(part) for part in whole],
        minor_digits(invoice.currency),
        RoundingRule(invoice.rounding_rule),
        prepaid=invoice.prepaid,
        rounding=invoice.rounding,
    )


def amount_line(row: InvoiceLine) -> AmountLine:
    """A kept line as the arithmetic takes it."""
    return AmountLine(row.quantity, row.unit_price, row.tax_category, row.tax_percent, row.allowance)


def whole_amount(row: DocumentAmount) -> WholeAmount:
    """A kept discount or charge on the whole as the arithmetic takes it."""
    return WholeAmount(row.is_charge, row.amount, row.tax_category, row.tax_percent)

"""What of an issued invoice can still be credited."""

from decimal import Decimal

from invoicing.domain.credit_lines import Creditable, CreditableLine, CreditableWhole, lines_left
from invoicing.domain.minor_units import minor_digits
from invoicing.models import DocumentAmount, Invoice, InvoiceLine
from trimops.kernel.money import round_money


def creditable(invoice: Invoice) -> Creditable:
    """The invoice as the arithmetic of credit notes takes it."""
    digits = minor_digits(invoice.currency)
    lines = InvoiceLine.objects.within(invoice.scope).filter(invoice=invoice)
    whole = DocumentAmount.objects.within(invoice.scope).filter(invoice=invoice)
    return Creditable(
        tuple(_line(row, row.pk, digits) for row in lines),
        tuple(_whole(row, digits) for row in whole),
        round_money(invoice.gross + invoice.rounding, digits),
    )


def credited(invoice: Invoice) -> Creditable:
    """What its credit notes take back, those still drafted included."""
    digits = minor_digits(invoice.currency)
    notes = Invoice.objects.within(invoice.scope).credit_notes().filter(corrects=invoice)
    lines = InvoiceLine.objects.within(invoice.scope).filter(invoice__in=notes)
    whole = DocumentAmount.objects.within(invoice.scope).filter(invoice__in=notes)
    return Creditable(
        tuple(_line(row, row.credits_id or 0, digits) for row in lines),
        tuple(_whole(row, digits) for row in whole),
        sum((round_money(note.gross + note.rounding, digits) for note in notes), Decimal(0)),
    )


def credit_left(invoice: Invoice) -> dict[int, CreditableLine]:
    """What is left of each line by its key; empty when all was credited."""
    return lines_left(creditable(invoice), credited(invoice))


def whole_key(row: DocumentAmount) -> str:
    """The same on an invoice and on its credit notes; no two of one invoice have the same."""
    return f"{row.is_charge}|{row.tax_category}|{row.tax_percent:f}|{row.reason}"


def _line(row: InvoiceLine, key: int, digits: int) -> CreditableLine:
    return CreditableLine(
        key,
        row.quantity,
        row.unit_price,
        round_money(row.allowance, digits),
        row.tax_category,
        row.tax_percent,
        round_money(row.net, digits),
    )


def _whole(row: DocumentAmount, digits: int) -> CreditableWhole:
    amount = round_money(row.amount, digits)
    return CreditableWhole(whole_key(row), row.is_charge, amount, row.tax_category, row.tax_percent)

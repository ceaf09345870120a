"""Issued papers with lines and tax, put down without drawing them: for tests of reminders and books."""

from collections.abc import Sequence
from datetime import date, timedelta
from decimal import Decimal
from itertools import count

from farms.models import Farm
from invoicing.domain.amounts import AmountLine, RoundingRule, WholeAmount, invoice_amounts
from invoicing.domain.pricing import PriceItem
from invoicing.models import (
    Allocation,
    DocumentAmount,
    Invoice,
    InvoiceKind,
    InvoiceLine,
    InvoicePapers,
    InvoiceState,
)
from tests.factories import NOON

ISSUED_ON = date(2026, 2, 2)
TERM = timedelta(days=14)
NET = ("line_sum", "allowances", "charges", "net", "tax", "gross", "payable")
_numbers = count(1)


def line(price: str, percent: str = "20", category: str = "S", quantity: str = "1") -> AmountLine:
    return AmountLine(Decimal(quantity), Decimal(price), category, Decimal(percent))


def discount(amount: str, percent: str = "20", category: str = "S") -> WholeAmount:
    return WholeAmount(False, Decimal(amount), category, Decimal(percent))


def booked(
    farm: Farm,
    *lines: AmountLine,
    on: date = ISSUED_ON,
    whole: Sequence[WholeAmount] = (),
    corrects: Invoice | None = None,
    rule: RoundingRule = RoundingRule.PER_RATE,
    wrong_tax: Decimal | None = None,
    **fields: object,
) -> Invoice:
    """An issued invoice (a credit note where it `corrects` one), due two weeks after its day."""
    kind = InvoiceKind.CREDIT_NOTE if corrects else InvoiceKind.INVOICE
    told = {
        "currency": farm.business.currency,
        "tax_point": on,
        "kind": kind,
        "rounding_rule": rule,
        "reason": "A cow counted twice" if corrects else "",
        **fields,
    }
    invoice = Invoice.objects.create(
        business=farm.business, farm=farm, payer=farm.payer, drafted_at=NOON, corrects=corrects, **told
    )
    _put_lines(invoice, lines, whole)
    amounts = invoice_amounts(lines, whole, 2, rule)
    for name in NET:
        setattr(invoice, name, getattr(amounts, name))
    invoice.tax = amounts.tax if wrong_tax is None else wrong_tax
    invoice.number = f"{'CN' if corrects else 'INV'}-{on.year}-{next(_numbers):04d}"
    invoice.issued_on, invoice.due_on, invoice.is_open = on, on + TERM, bool(amounts.payable)
    invoice.seller = {"name": farm.business.name}
    invoice.buyer = {"name": farm.payer.name if farm.payer else farm.name, "address": farm.address}
    invoice.papers = InvoicePapers.objects.create(
        business=farm.business, pdf=b"%PDF", pdf_sha256="0" * 64, no_xml_because="A test."
    )
    invoice.state = InvoiceState.ISSUED
    invoice.save()
    return invoice


def _put_lines(invoice: Invoice, lines: Sequence[AmountLine], whole: Sequence[WholeAmount]) -> None:
    InvoiceLine.objects.bulk_create(
        InvoiceLine(
            business=invoice.business,
            invoice=invoice,
            position=position,
            item=PriceItem.OTHER,
            description="Work",
            quantity=part.quantity,
            unit="C62",
            unit_price=part.unit_price,
            allowance=part.allowance,
            tax_category=part.tax_category,
            tax_percent=part.tax_percent,
            net=part.quantity * part.unit_price - part.allowance,
        )
        for position, part in enumerate(lines, start=1)
    )
    for part in whole:
        DocumentAmount.objects.create(
            business=invoice.business,
            invoice=invoice,
            is_charge=part.is_charge,
            amount=part.amount,
            reason="Agreed",
            tax_category=part.tax_category,
            tax_percent=part.tax_percent,
        )


def written_off(invoice: Invoice, amount: str, on: date, by: object) -> Allocation:
    """An allocation that stands, without the rules of the service that makes one."""
    return Allocation.objects.create(
        business=invoice.business,
        invoice=invoice,
        kind="write_off",
        amount=Decimal(amount),
        on=on,
        reason="Gone away",
        noted_at=NOON,
        noted_by=by,
    )

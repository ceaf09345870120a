"""Issued invoices and credit notes of a given amount, put down without drawing their papers: for tests of payments."""

from datetime import date, timedelta
from decimal import Decimal
from itertools import count

from farms.models import Farm
from invoicing.domain.creditor_reference import creditor_reference
from invoicing.models import Invoice, InvoiceKind, InvoicePapers, InvoiceState
from tests.factories import NOON

ISSUED_ON = date(2026, 2, 2)
_numbers = count(1)


def issued(farm: Farm, amount: str | Decimal, on: date = ISSUED_ON, **fields: object) -> Invoice:
    """An issued invoice of which `amount` is to be paid within 14 days."""
    number = str(fields.pop("number", f"INV-2026-{next(_numbers):04d}"))
    papers = InvoicePapers.objects.create(
        business=farm.business, pdf=b"%PDF", pdf_sha256="0" * 64, no_xml_because="A test."
    )
    sum_fields = dict.fromkeys(("line_sum", "net", "gross", "payable"), Decimal(amount))
    told = {
        "kind": InvoiceKind.INVOICE,
        "payer": farm.payer,
        "currency": farm.business.currency,
        "due_on": on + timedelta(days=14),
        "creditor_reference": creditor_reference(number),
        "buyer": {"name": farm.payer.name if farm.payer else farm.name},
        "is_open": True,
        **sum_fields,
        **fields,
    }
    return Invoice.objects.create(
        business=farm.business,
        farm=farm,
        state=InvoiceState.ISSUED,
        number=number,
        issued_on=on,
        issued_at=NOON,
        drafted_at=NOON,
        tax_point=on,
        papers=papers,
        **told,
    )


def credited(invoice: Invoice, amount: str | Decimal, on: date | None = None) -> Invoice:
    """An issued credit note on that invoice, not set off yet."""
    return issued(
        invoice.farm,
        amount,
        on or invoice.issued_on,
        kind=InvoiceKind.CREDIT_NOTE,
        corrects=invoice,
        reason="A cow counted twice",
        due_on=None,
        number=f"CN-{invoice.number}-{next(_numbers)}",
    )

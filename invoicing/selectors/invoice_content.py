"""An invoice as the values its paper is drawn from."""

from datetime import datetime, time
from decimal import Decimal

from invoicing.documents.invoice_content import (
    InvoiceLine as PaperLine,
)
from invoicing.documents.invoice_content import (
    InvoicePaper,
    Party,
    Payment,
    TaxRow,
)
from invoicing.domain.amounts import AmountLine, invoice_amounts
from invoicing.domain.minor_units import minor_digits
from invoicing.models import Invoice, InvoiceLine, TaxRate
from invoicing.selectors.parties import buyer_of, seller_of
from trimops.kernel.clock import at_local
from trimops.kernel.scope import Scope


def invoice_content(invoice: Invoice) -> InvoicePaper:
    """The paper of an invoice: a draft (no number yet) shows the parties as they stand today."""
    scope = Scope(invoice.business_id)
    lines = list(InvoiceLine.objects.within(scope).filter(invoice=invoice))
    day = invoice.issued_on or invoice.tax_point
    seller = invoice.seller or seller_of(invoice.business)
    return InvoicePaper(
        number=invoice.number or None,
        issue_date=day,
        tax_point=invoice.tax_point,
        due_date=invoice.due_on,
        made_at=_made_at(invoice),
        seller=_party(seller),
        buyer=_party(invoice.buyer or buyer_of(invoice.farm)),
        lines=tuple(_line(line) for line in lines),
        tax_rows=tuple(_tax_rows(scope, invoice, lines)),
        net=invoice.net,
        tax=invoice.tax,
        gross=invoice.gross,
        due=invoice.gross,
        currency=invoice.currency,
        digits=minor_digits(invoice.currency),
        payment=_payment(invoice, seller),
        notes=tuple(filter(None, [f"Work at {invoice.farm.name}", invoice.note])),
    )


def _made_at(invoice: Invoice) -> datetime:
    """Noon of the day of issue: the same invoice always gives the same bytes."""
    return at_local(invoice.issued_on or invoice.tax_point, time(12), invoice.business.zone)


def _party(kept: dict[str, str]) -> Party:
    return Party(
        kept["name"],
        tuple(line for line in kept.get("address", "").splitlines() if line.strip()),
        kept.get("vat_number", ""),
        kept.get("phone", ""),
        kept.get("email", ""),
    )


def _line(line: InvoiceLine) -> PaperLine:
    return PaperLine(
        line.description,
        line.quantity,
        line.unit,
        line.unit_price,
        line.tax_category,
        line.tax_percent,
        line.net,
        line.why,
    )


def _tax_rows(scope: Scope, invoice: Invoice, lines: list[InvoiceLine]) -> list[TaxRow]:
    asked = [AmountLine(row.quantity, row.unit_price, row.tax_category, row.tax_percent) for row in lines]
    shares = invoice_amounts(asked, minor_digits(invoice.currency)).tax_shares
    return [
        TaxRow(
            share.category,
            share.percent,
            share.taxable,
            share.tax,
            _reason(scope, invoice, share.category, share.percent),
        )
        for share in shares
    ]


def _reason(scope: Scope, invoice: Invoice, category: str, percent: Decimal) -> str:
    rows = TaxRate.objects.within(scope).filter(category=category, percent=percent)
    row = rows.filter(valid_from__lte=invoice.tax_point).order_by("-valid_from").first()
    return row.reason if row else ""


def _payment(invoice: Invoice, seller: dict[str, str]) -> Payment:
    lines = [line.partition(":") for line in seller.get("bank_details", "").splitlines() if line.strip()]
    details = tuple((what.strip(), value.strip()) for what, _, value in lines)
    terms = f"Please pay by {invoice.due_on:%-d %B %Y}." if invoice.due_on else ""
    return Payment(details, invoice.number, terms)

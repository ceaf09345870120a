"""An invoice as the values its paper is drawn from."""

from collections.abc import Sequence
from datetime import datetime, time, timedelta
from decimal import Decimal

from invoicing.documents.invoice_content import (
    Correction,
    HomeTax,
    InvoicePaper,
    Payment,
    TaxRow,
    WholeLine,
)
from invoicing.documents.invoice_content import InvoiceLine as PaperLine
from invoicing.domain.amounts import RoundingRule
from invoicing.domain.home_currency import home_currency, tax_at_home
from invoicing.domain.minor_units import minor_digits
from invoicing.models import DocumentAmount, Invoice, InvoiceLine, MoneyRules
from invoicing.selectors.kept_amounts import KeptRows, amounts_of, kept_rows
from invoicing.selectors.money_rules import money_rules
from invoicing.selectors.parties import buyer_of, party_on_paper, payment_of, payment_on_paper, seller_of
from trimops.kernel.clock import at_local
from trimops.kernel.money import round_money
from trimops.kernel.scope import Scope


def invoice_content(
    invoice: Invoice, rows: KeptRows | None = None, rules: MoneyRules | None = None
) -> InvoicePaper:
    """The paper of an invoice: a draft (no number yet) shows the parties as they stand today.

    `rows` and `rules` where they were read already.
    """
    rows = rows or kept_rows(invoice)
    lines, whole = rows.lines, rows.whole
    day = invoice.issued_on or invoice.tax_point
    digits = minor_digits(invoice.currency)
    rules = rules or money_rules(Scope(invoice.business_id))
    period = invoice.period_from, invoice.period_until
    payment = invoice.payment or payment_of(invoice.business, rules)
    return InvoicePaper(
        number=invoice.number or None,
        issue_date=day,
        tax_point=invoice.tax_point,
        due_date=invoice.due_on,
        made_at=_made_at(invoice),
        seller=party_on_paper(invoice.seller or seller_of(invoice.business, rules)),
        buyer=party_on_paper(invoice.buyer or buyer_of(invoice.farm, invoice.payer)),
        lines=tuple(_line(line, digits) for line in lines),
        tax_rows=tuple(_tax_rows(invoice, lines, whole, digits)),
        net=round_money(invoice.net, digits),
        tax=round_money(invoice.tax, digits),
        gross=round_money(invoice.gross, digits),
        due=round_money(invoice.payable, digits),
        paid=round_money(invoice.prepaid, digits),
        currency=invoice.currency,
        digits=digits,
        tax_name=invoice.tax_name,
        payment=_payment(invoice, payment),
        corrects=_correction(invoice),
        cash_discount=_cash_discount(invoice, payment),
        notes=tuple(filter(None, [_place(invoice), invoice.note])),
        whole=tuple(_whole(part, digits) for part in whole),
        line_sum=round_money(invoice.line_sum, digits),
        allowances=round_money(invoice.allowances, digits),
        charges=round_money(invoice.charges, digits),
        rounding=round_money(invoice.rounding, digits),
        order_number=invoice.order_number,
        buyer_reference=invoice.buyer_reference,
        period=(period[0], period[1]) if period[0] and period[1] else None,
        logo=bytes(rules.logo) if rules.logo else None,
        rounding_rule=RoundingRule(invoice.rounding_rule),
        home_tax=_home_tax(invoice),
    )


def _home_tax(invoice: Invoice) -> HomeTax | None:
    country = invoice.seller.get("country", "") or invoice.business.country
    home = home_currency(country, invoice.currency)
    if not home or invoice.home_rate is None or not invoice.tax:
        return None
    return HomeTax(home, tax_at_home(invoice.tax, invoice.home_rate, home))


def _place(invoice: Invoice) -> str:
    """Where the work was, for a payer who is not the farm."""
    return f"Work at {invoice.farm.name}" if invoice.payer_id else ""


def _made_at(invoice: Invoice) -> datetime:
    """Noon of the day of issue: the same invoice always gives the same bytes."""
    return at_local(invoice.issued_on or invoice.tax_point, time(12), invoice.business.zone)


def _line(line: InvoiceLine, digits: int) -> PaperLine:
    return PaperLine(
        line.description,
        line.quantity,
        line.unit,
        line.unit_price,
        line.tax_category,
        line.tax_percent,
        round_money(line.net, digits),
        line.why,
        round_money(line.allowance, digits),
        line.allowance_percent,
        line.allowance_reason,
        line.done_on,
    )


def _whole(part: DocumentAmount, digits: int) -> WholeLine:
    base = None if part.base is None else round_money(part.base, digits)
    amount = round_money(part.amount, digits)
    return WholeLine(
        part.is_charge, amount, part.reason, part.tax_category, part.tax_percent, base, part.percent
    )


def _tax_rows(
    invoice: Invoice, lines: Sequence[InvoiceLine], whole: Sequence[DocumentAmount], digits: int
) -> list[TaxRow]:
    shares = amounts_of(invoice, lines, whole).tax_shares
    reasons = _reasons([*lines, *whole])
    return [
        TaxRow(
            share.category,
            share.percent,
            round_money(share.taxable, digits),
            share.tax,
            *reasons.get((share.category, share.percent), ("", "")),
        )
        for share in shares
    ]


def _reasons(
    rows: Sequence[InvoiceLine | DocumentAmount],
) -> dict[tuple[str, Decimal], tuple[str, str]]:
    return {
        (row.tax_category, row.tax_percent): (row.tax_reason, row.tax_reason_code)
        for row in rows
        if row.tax_reason or row.tax_reason_code
    }


def _correction(invoice: Invoice) -> Correction | None:
    if invoice.corrects is None or invoice.corrects.issued_on is None:
        return None
    return Correction(invoice.corrects.number, invoice.corrects.issued_on, invoice.reason)


def _payment(invoice: Invoice, kept: dict[str, str]) -> Payment:
    is_due = invoice.due_on is not None and not invoice.is_credit_note
    terms = f"Please pay by {invoice.due_on:%-d %B %Y}." if is_due else ""
    return payment_on_paper(kept, invoice.number, terms, invoice.creditor_reference)


def _cash_discount(invoice: Invoice, kept: dict[str, str]) -> str:
    """The rate is asked for by the VAT Regulations 1995, reg 14(1)."""
    percent, days = kept.get("cash_discount_percent", ""), kept.get("cash_discount_days", "")
    if not percent or invoice.is_credit_note:
        return ""
    if invoice.issued_on is None:
        return f"Discount for prompt payment: {percent} % when paid within {days} days."
    last = invoice.issued_on + timedelta(days=int(days))
    return f"Discount for prompt payment: {percent} % when paid by {last:%-d %B %Y}."

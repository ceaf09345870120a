"""A draft becomes an invoice: numbered, dated, drawn and frozen in one transaction."""

import hashlib
from datetime import date, datetime, timedelta

from django.db import transaction

from invoicing.documents.invoice_pdf import invoice_pdf
from invoicing.domain.invoice_number import invoice_number
from invoicing.models import Invoice, InvoicePapers, InvoiceState, NumberSeries
from invoicing.selectors.invoice_content import invoice_content
from invoicing.selectors.money_rules import money_rules
from invoicing.selectors.parties import buyer_of, payment_of, seller_of
from trimops.accounts.models import User
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.tenancy.models import TenantModel

PREFIX = "INV"


class AlreadyIssued(RuleBroken):
    """An issued invoice is never issued again nor changed."""

    code = "already_issued"


class NothingToBill(RuleBroken):
    """The draft has no lines."""

    code = "nothing_to_bill"


@transaction.atomic
def issue_invoice(*, invoice: Invoice, at: datetime, by: User) -> Invoice:
    """Take the next number of the year's series and freeze the invoice with its PDF.

    The counter row stays locked until the invoice is stored, so a crash or a refusal gives the number back: no gap,
    no double. AlreadyIssued on the second press of the button, InvoiceIncomplete when an address is missing.
    """
    row = invoice.locked()
    if row.is_issued:
        raise AlreadyIssued(f"This is invoice {row.number} already.")
    if not row.lines.within(row.scope).exists():
        raise NothingToBill("The draft has no lines: there is nothing to bill.")
    day = local_day(at, row.business.zone)
    row.number = _next_number(row, day)
    row.issued_on, row.issued_by = day, by
    row.due_on = day + timedelta(days=_payment_days(row))
    rules = money_rules(row.scope)
    row.seller, row.buyer = seller_of(row.business, rules), buyer_of(row.farm)
    row.payment, row.issued_at, row.is_open = payment_of(row.business, rules), at, bool(row.payable)
    row.papers = _keep_papers(row)
    row.state = InvoiceState.ISSUED
    row.full_clean()
    row.save()
    return row


def _keep_papers(invoice: Invoice) -> InvoicePapers:
    pdf = invoice_pdf(invoice_content(invoice))
    papers = InvoicePapers(business_id=invoice.business_id, pdf=pdf)
    papers.pdf_sha256 = hashlib.sha256(pdf).hexdigest()
    papers.no_xml_because = "Not made yet."
    papers.full_clean()
    papers.save()
    return papers


def _payment_days(invoice: Invoice) -> int:
    payer = invoice.farm.payer
    own = payer.payment_days if payer else None
    return invoice.business.payment_days if own is None else own


def _next_number(invoice: Invoice, day: date) -> str:
    series = _locked_series(invoice, day.year)
    series.last += 1
    series.save()
    return invoice_number(PREFIX, day.year, series.last)


def _locked_series(invoice: TenantModel, year: int) -> NumberSeries:
    rows = NumberSeries.objects.within(invoice.scope).select_for_update()
    series, _ = rows.get_or_create(business_id=invoice.business_id, prefix=PREFIX, year=year)
    return series

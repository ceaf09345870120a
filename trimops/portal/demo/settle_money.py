"""What came in for the demo's invoices: most are paid, one in part, one is credited, some wait to be reminded of."""

from datetime import datetime, timedelta
from decimal import Decimal

from invoicing.domain.credit_lines import CreditAsk
from invoicing.domain.settling import PaymentMethod
from invoicing.models import Invoice
from invoicing.services.credit_invoice import draft_credit_note
from invoicing.services.issue_invoice import issue_invoice
from invoicing.services.keep_day_journeys import keep_journeys
from invoicing.services.note_payment import MoneyReceived, note_payment
from invoicing.services.propose_reminders import propose_reminders
from trimops.kernel.clock import local_day
from trimops.kernel.money import round_money
from trimops.portal.demo.build_people import Crew

PAID_AFTER = timedelta(days=9)
UNPAID, IN_PART, IN_CASH = {0, 3}, 5, 6
"""Places among the issued ones, the oldest first."""
DRIVEN = timedelta(days=45)


def settle_money(crew: Crew, issued: list[Invoice], at: datetime) -> None:
    """Payments up to today; then what the nightly jobs would do: reminders proposed, drives written down."""
    for place, invoice in enumerate(issued[:-3]):
        if place not in UNPAID:
            _paid(crew, invoice, at, place)
    if len(issued) > 1:
        _one_credited(crew, issued[-1], at)
    propose_reminders(business=crew.business, at=at)
    today = local_day(at, crew.business.zone)
    keep_journeys(business=crew.business, first=today - DRIVEN, last=today, at=at)


def _paid(crew: Crew, invoice: Invoice, at: datetime, place: int) -> None:
    if invoice.issued_on is None or invoice.issued_on + PAID_AFTER > local_day(at, crew.business.zone):
        return
    whole = round_money(invoice.payable)
    amount = round_money(whole / 2) if place == IN_PART else whole
    money = MoneyReceived(
        invoice.farm,
        invoice.issued_on + PAID_AFTER,
        amount,
        invoice.currency,
        PaymentMethod.CASH if place == IN_CASH else PaymentMethod.BANK,
        {invoice.pk: amount},
        invoice.creditor_reference,
        invoice.buyer["name"],
    )
    note_payment(money=money, at=at, by=crew.people["office"])


def _one_credited(crew: Crew, invoice: Invoice, at: datetime) -> None:
    """A cow too many was billed on the newest."""
    line = invoice.lines.within(invoice.scope).order_by("position").first()
    if line is None:
        return
    office = crew.people["office"]
    draft = draft_credit_note(
        invoice=invoice,
        asks=[CreditAsk(line.pk, quantity=Decimal(1))],
        reason="One cow was billed twice by mistake.",
        work_may_be_billed_again=False,
        at=at,
        by=office,
    )
    issue_invoice(invoice=draft, at=at, by=office)

"""Issued invoices as the farm sees them: what each is, and what of it is still to pay."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from django.db.models import Sum

from invoicing.domain.paid_state import PaidState, paid_state
from invoicing.models import Invoice
from invoicing.models.invoice import OPEN_AMOUNT, InvoiceQuerySet
from trimops.kernel.scope import Scope


@dataclass(frozen=True)
class FarmInvoice:
    """One paper. `left`: still to pay; of a credit note what was not set off yet."""

    invoice: Invoice
    left: Decimal
    state: PaidState


@dataclass(frozen=True)
class ToPay:
    """All that is open in one currency. `credit`: credit notes that were not set off yet; `overdue`: of the bills."""

    currency: str
    bills: Decimal
    credit: Decimal
    overdue: Decimal

    @property
    def left(self) -> Decimal:
        """Still to pay; negative where more was credited than is owed."""
        return self.bills - self.credit


def papers_of_farm(scope: Scope) -> InvoiceQuerySet:
    """Issued invoices and credit notes, the newest first; of their papers only what tells whether there is XML."""
    rows = Invoice.objects.within(scope).issued().select_related("papers", "corrects")
    blobs = ("papers__pdf", "papers__cii", "papers__ubl")
    newest: InvoiceQuerySet = rows.defer(*blobs).order_by("-issued_on", "-id")
    return newest


def farm_invoice(invoice: Invoice, today: date) -> FarmInvoice:
    state = paid_state(invoice.payable, invoice.settled, invoice.due_on, today)
    return FarmInvoice(invoice, max(invoice.open_amount, Decimal(0)), state)


def to_pay(scope: Scope, today: date) -> list[ToPay]:
    """By currency, those alone with something open. Three queries."""
    rows = Invoice.objects.within(scope).issued().filter(is_open=True)
    bills, late = _sums(rows.bills()), _sums(rows.bills().filter(due_on__lt=today))
    credit, none = _sums(rows.credit_notes()), Decimal(0)
    return [
        ToPay(currency, bills.get(currency, none), credit.get(currency, none), late.get(currency, none))
        for currency in sorted(bills.keys() | credit.keys())
    ]


def _sums(rows: InvoiceQuerySet) -> dict[str, Decimal]:
    found = rows.order_by("currency").values("currency").annotate(left=Sum(OPEN_AMOUNT))
    return {row["currency"]: row["left"] for row in found}

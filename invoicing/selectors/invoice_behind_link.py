"""The invoice that a secret address opens."""

from dataclasses import dataclass
from datetime import date, datetime

from invoicing.domain.bank_account import in_fours
from invoicing.models import Invoice, InvoiceLine, InvoiceLink
from invoicing.selectors.farm_invoices import FarmInvoice, farm_invoice
from trimops.accounts.models import Business
from trimops.kernel.scope import Scope
from trimops.kernel.secret_link import hash_of
from trimops.tenancy.unscoped import unscoped


@dataclass(frozen=True)
class Behind:
    """What the page of the link shows."""

    paper: FarmInvoice
    lines: tuple[InvoiceLine, ...]
    credit_notes: tuple[Invoice, ...]
    ways: tuple[tuple[str, str], ...]
    ring: tuple[str, str]


def invoice_link_of(secret: str, at: datetime) -> InvoiceLink | None:
    """The link that the secret opens at that moment; None for an unknown, ended or closed one, and for an erased farm,
    alike."""
    with unscoped("the secret alone says whose invoice it is"):
        rows = InvoiceLink.objects.filter(secret_hash=hash_of(secret))
        found = rows.select_related("business", "invoice__farm", "invoice__corrects").first()
    if found is None or not found.is_alive(at) or found.invoice.farm.erased_at is not None:
        return None
    return found


def invoice_behind_link(link: InvoiceLink, today: date) -> Behind:
    """The paper with its lines, what was credited on it, how to pay and whom to ring. Two queries."""
    invoice, scope = link.invoice, Scope(link.business_id)
    credits = Invoice.objects.within(scope).issued().filter(corrects=invoice).order_by("issued_on", "id")
    lines = InvoiceLine.objects.within(scope).filter(invoice=invoice)
    return Behind(
        farm_invoice(invoice, today), tuple(lines), tuple(credits), ways_to_pay(invoice), _ring(link.business)
    )


def ways_to_pay(invoice: Invoice) -> tuple[tuple[str, str], ...]:
    """As it was printed: pairs of (what, value), the reference last; nothing on a credit note."""
    if invoice.is_credit_note:
        return ()
    return (*account_to_pay(invoice), ("Reference", invoice.creditor_reference or invoice.number))


def account_to_pay(invoice: Invoice) -> tuple[tuple[str, str], ...]:
    """The account as it was printed on the invoice: pairs of (what, value)."""
    kept: dict[str, str] = invoice.payment
    iban = kept.get("iban", "")
    pairs = [
        ("Account of", kept.get("account_name", "") if iban else ""),
        ("IBAN", in_fours(iban)),
        ("BIC", kept.get("bic", "")),
    ]
    for line in kept.get("details", "").splitlines():
        what, _, value = line.partition(":")
        pairs.append((what.strip(), value.strip()) if value.strip() else ("Pay to", what.strip()))
    return tuple((what, value) for what, value in pairs if value)


def _ring(business: Business) -> tuple[str, str]:
    """Phone and e-mail of the business as they are now: who moved is not rung at the old number."""
    return business.phone, business.email

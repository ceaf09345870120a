"""What the mail with an invoice says before anybody changes it."""

from dataclasses import dataclass
from decimal import Decimal

from invoicing.domain.minor_units import minor_digits
from invoicing.models import Invoice, InvoicePapers
from invoicing.selectors.money_addresses import money_addresses, wants_xml
from trimops.kernel.money import round_money
from trimops.paper.figures import money


@dataclass(frozen=True)
class InvoiceMail:
    """`addresses` are those put down for the farm; `no_xml_because` says why the XML cannot be added, or nothing."""

    subject: str
    body: str
    addresses: tuple[str, ...]
    with_xml: bool
    no_xml_because: str


def invoice_mail(invoice: Invoice) -> InvoiceMail:
    """Subject, text and addresses for an issued invoice or credit note; wants `farm__payer` and `business` at hand."""
    because = _no_xml_because(invoice)
    return InvoiceMail(
        _subject(invoice),
        _body(invoice),
        tuple(money_addresses(invoice.farm)),
        not because and wants_xml(invoice.farm),
        because,
    )


def _no_xml_because(invoice: Invoice) -> str:
    rows = InvoicePapers.objects.within(invoice.scope).filter(invoice=invoice)
    found = rows.values_list("ubl_sha256", "no_xml_because").first()
    if found is None:
        return "It is not issued yet."
    return "" if found[0] else found[1] or "None was made."


def _subject(invoice: Invoice) -> str:
    if invoice.is_credit_note and invoice.corrects is not None:
        return (
            f"Credit note {invoice.number} on invoice {invoice.corrects.number} from {invoice.business.name}"
        )
    due = f", due {invoice.due_on:%-d %b %Y}" if invoice.due_on else ""
    return f"Invoice {invoice.number} from {invoice.business.name}: {_sum(invoice, invoice.payable)}{due}"


def _body(invoice: Invoice) -> str:
    lines = _of_credit(invoice) if invoice.is_credit_note else _of_invoice(invoice)
    return "\n".join([f"{_buyer(invoice)},", "", *lines, "", *_ring(invoice), "", *_seller(invoice)])


def _of_invoice(invoice: Invoice) -> list[str]:
    return [f"our invoice {invoice.number} for {_work(invoice)} is attached.", "", _to_pay(invoice)]


def _to_pay(invoice: Invoice) -> str:
    left = invoice.open_amount
    if invoice.payable <= 0:
        return "There is nothing left to pay on it."
    if left <= 0:
        return "It is paid: thank you."
    of = f" of {_sum(invoice, invoice.payable)}" if invoice.settled else ""
    due = f" by {invoice.due_on:%-d %b %Y}" if invoice.due_on else ""
    reference = invoice.creditor_reference or invoice.number
    return f"To pay: {_sum(invoice, left)}{of}{due}, with the reference {reference}."


def _of_credit(invoice: Invoice) -> list[str]:
    on = f" on invoice {invoice.corrects.number}" if invoice.corrects else ""
    return [
        f"our credit note {invoice.number}{on} is attached: {_sum(invoice, invoice.payable)}.",
        "",
        f"Why: {invoice.reason}",
    ]


def _work(invoice: Invoice) -> str:
    first, last = invoice.period_from, invoice.period_until
    if first and last and first != last:
        return f"the work at {invoice.farm.name} from {first:%-d %b} to {last:%-d %b %Y}"
    return f"the work at {invoice.farm.name} on {(first or invoice.tax_point):%-d %b %Y}"


def _ring(invoice: Invoice) -> list[str]:
    phone = invoice.seller.get("phone", "")
    ring = f"ring {phone}, or answer this mail" if phone else "answer this mail"
    return [f"If something on it is not right, {ring}."]


def _seller(invoice: Invoice) -> list[str]:
    return [invoice.seller.get("name") or invoice.business.name]


def _buyer(invoice: Invoice) -> str:
    return invoice.buyer.get("name") or invoice.farm.name


def _sum(invoice: Invoice, amount: Decimal) -> str:
    digits = minor_digits(invoice.currency)
    return money(round_money(amount, digits), invoice.currency, digits)

"""What stands on an invoice or a credit note. All figures are handed in ready; nothing is computed on paper.

The fields answer to the contents list of the VAT Regulations 1995 (SI 1995/2518), regulation 14(1).
"""

from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal


@dataclass(frozen=True)
class Party:
    """Seller or buyer. `tax_number` with its country letters ("GB123456789"); empty when there is none."""

    name: str
    address: tuple[str, ...]
    tax_number: str = ""
    phone: str = ""
    email: str = ""
    more: tuple[str, ...] = ()


@dataclass(frozen=True)
class InvoiceLine:
    """One line. `unit` in words or as a Recommendation 20 code (C62, KMT); `why` stands small below."""

    description: str
    quantity: Decimal
    unit: str
    unit_price: Decimal
    tax_category: str
    tax_percent: Decimal
    net: Decimal
    why: str = ""


@dataclass(frozen=True)
class TaxRow:
    """Tax of one category (UNCL 5305) and rate on the summed net; a reason where none is charged."""

    category: str
    percent: Decimal
    taxable: Decimal
    tax: Decimal
    exempt_reason: str = ""


@dataclass(frozen=True)
class Payment:
    """How to pay: lines of (what, value), such as ("Sort code", "00-00-00"), and the terms in a sentence."""

    details: tuple[tuple[str, str], ...] = ()
    reference: str = ""
    terms: str = ""


@dataclass(frozen=True)
class Correction:
    """A credit note names the invoice that it corrects, its date, and why."""

    invoice_number: str
    invoice_date: date
    reason: str


@dataclass(frozen=True)
class InvoicePaper:
    """The whole paper. `number` None: a draft. `corrects` makes it a credit note. `digits`: of the currency.

    `cash_discount` is the sentence on a discount for prompt payment. `tax_in_sterling` is needed when the currency
    is not GBP and UK VAT is charged.
    """

    number: str | None
    issue_date: date
    tax_point: date
    due_date: date | None
    made_at: datetime
    seller: Party
    buyer: Party
    lines: tuple[InvoiceLine, ...]
    tax_rows: tuple[TaxRow, ...]
    net: Decimal
    tax: Decimal
    gross: Decimal
    due: Decimal
    paid: Decimal = Decimal(0)
    currency: str = "GBP"
    digits: int = 2
    tax_name: str = "VAT"
    payment: Payment = Payment()
    corrects: Correction | None = None
    cash_discount: str = ""
    tax_in_sterling: Decimal | None = None
    notes: tuple[str, ...] = ()

    @property
    def kind(self) -> str:
        """ "Invoice" or "Credit note" """
        return "Credit note" if self.corrects else "Invoice"

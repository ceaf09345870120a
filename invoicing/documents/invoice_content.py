"""What stands on an invoice or a credit note. All figures are handed in ready; nothing is computed on paper.

The fields answer to the contents list of the VAT Regulations 1995 (SI 1995/2518), regulation 14(1).
"""

from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal

from invoicing.domain.amounts import RoundingRule


@dataclass(frozen=True)
class Party:
    """Seller or buyer. `tax_number` with its country letters ("GB123456789"); empty when there is none.

    `country` by ISO 3166-1 (two letters). `registration` is the legal number that identifies the party without a tax
    number (BT-30, BT-47), `registration_name` what it is called.
    """

    name: str
    address: tuple[str, ...]
    tax_number: str = ""
    phone: str = ""
    email: str = ""
    more: tuple[str, ...] = ()
    country: str = ""
    registration: str = ""
    registration_name: str = ""


@dataclass(frozen=True)
class InvoiceLine:
    """One line. `unit` in words or as a Recommendation 20 code (C62, KMT, SMI); `why` stands small below.

    net = quantity x unit_price - allowance, rounded once (BT-131). `done_on`: the day of the work.
    """

    description: str
    quantity: Decimal
    unit: str
    unit_price: Decimal
    tax_category: str
    tax_percent: Decimal
    net: Decimal
    why: str = ""
    allowance: Decimal = Decimal(0)
    allowance_percent: Decimal | None = None
    allowance_reason: str = ""
    done_on: date | None = None


@dataclass(frozen=True)
class WholeLine:
    """A discount on the whole document (BG-20) or a charge (BG-21); `amount` is not negative."""

    is_charge: bool
    amount: Decimal
    reason: str
    tax_category: str
    tax_percent: Decimal
    base: Decimal | None = None
    percent: Decimal | None = None


@dataclass(frozen=True)
class TaxRow:
    """Tax of one category (UNCL 5305) and rate on the summed net; a reason where none is charged.

    `exempt_code` is of the VATEX list of EN 16931 (BT-121), or empty.
    """

    category: str
    percent: Decimal
    taxable: Decimal
    tax: Decimal
    exempt_reason: str = ""
    exempt_code: str = ""


@dataclass(frozen=True)
class Payment:
    """How to pay: lines of (what, value), such as ("Sort code", "00-00-00"), and the terms in a sentence.

    With `iban` the paper has a slip with account, `creditor_reference` (ISO 11649) and, in euro, a QR code (EPC069-12).
    `credit_terms` are the business's own words on late payment, printed under it.
    """

    details: tuple[tuple[str, str], ...] = ()
    reference: str = ""
    terms: str = ""
    iban: str = ""
    bic: str = ""
    account_name: str = ""
    creditor_reference: str = ""
    credit_terms: str = ""


@dataclass(frozen=True)
class Correction:
    """A credit note names the invoice that it corrects, its date, and why."""

    invoice_number: str
    invoice_date: date
    reason: str


@dataclass(frozen=True)
class HomeTax:
    """The total tax in the currency of the country that gets it, where the invoice is in another."""

    currency: str
    amount: Decimal


@dataclass(frozen=True)
class InvoicePaper:
    """The whole paper. `number` None: a draft. `corrects` makes it a credit note. `digits`: of the currency.

    All amounts are positive on both kinds. `cash_discount` is the sentence on a discount for prompt payment.
    `home_tax` is needed where tax is charged in another currency than that of the seller's country. `period` are the
    first and last day of work where it bills more than one day. `logo` is a PNG or JPEG. `rounding_rule`: how the tax
    was rounded; None where it is not known.

    Totals (EN 16931): line_sum BT-106, allowances BT-107, charges BT-108, net BT-109, tax BT-110, gross BT-112, paid
    BT-113, rounding BT-114, due BT-115.
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
    home_tax: HomeTax | None = None
    notes: tuple[str, ...] = ()
    whole: tuple[WholeLine, ...] = ()
    line_sum: Decimal | None = None
    allowances: Decimal = Decimal(0)
    charges: Decimal = Decimal(0)
    rounding: Decimal = Decimal(0)
    order_number: str = ""
    buyer_reference: str = ""
    period: tuple[date, date] | None = None
    logo: bytes | None = None
    rounding_rule: RoundingRule | None = None

    @property
    def kind(self) -> str:
        """ "Invoice" or "Credit note" """
        return "Credit note" if self.corrects else "Invoice"

    @property
    def supplied_on(self) -> date:
        """The last day of work; the tax point where no line tells one."""
        return max((line.done_on for line in self.lines if line.done_on), default=self.tax_point)

    @property
    def sum_of_lines(self) -> Decimal:
        """BT-106; where it was not handed in, nothing stands between it and the net."""
        return self.net if self.line_sum is None else self.line_sum

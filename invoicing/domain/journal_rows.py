"""Issued papers as lines of the books: signed, by tax category and rate, and summed by currency."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal

from invoicing.domain.amounts import TaxShare

ZERO = Decimal(0)
RateKey = tuple[str, Decimal]
"""Tax category (UNCL 5305) and rate in percent."""
USUAL = "S"


@dataclass(frozen=True)
class JournalRow:
    """One issued invoice or credit note. Amounts of a credit note are negative; net + tax = gross."""

    invoice_id: int
    number: str
    is_credit_note: bool
    corrects: str
    issued_on: date
    tax_point: date
    due_on: date | None
    party: str
    farm: str
    currency: str
    shares: tuple[TaxShare, ...]
    net: Decimal
    tax: Decimal
    gross: Decimal


@dataclass(frozen=True)
class RateSum:
    """A period's sum at one category and rate: net of the invoices, of the credit notes (negative), tax of both."""

    currency: str
    category: str
    percent: Decimal
    papers: int
    net_invoiced: Decimal
    net_credited: Decimal
    tax: Decimal

    @property
    def net(self) -> Decimal:
        return self.net_invoiced + self.net_credited

    @property
    def gross(self) -> Decimal:
        return self.net + self.tax


@dataclass(frozen=True)
class CurrencySum:
    """What a period comes to in one currency."""

    currency: str
    papers: int
    net: Decimal
    tax: Decimal
    gross: Decimal


def signed_shares(shares: Iterable[TaxShare], sign: int) -> tuple[TaxShare, ...]:
    """The tax breakdown of a paper as it counts in the books: `sign` is -1 for a credit note."""
    return tuple(replace(share, taxable=share.taxable * sign, tax=share.tax * sign) for share in shares)


def rates_in(rows: Iterable[JournalRow]) -> list[RateKey]:
    """The categories and rates that occur: the usual category and the highest rate first."""
    found = {(share.category, share.percent) for row in rows for share in row.shares}
    return sorted(found, key=_by_rate)


def share_of(row: JournalRow, key: RateKey) -> TaxShare | None:
    """What a paper has at that category and rate."""
    return next((share for share in row.shares if (share.category, share.percent) == key), None)


def rate_sums(rows: Sequence[JournalRow]) -> list[RateSum]:
    """By currency, category and rate."""
    sums: dict[tuple[str, RateKey], RateSum] = {}
    for row in rows:
        for share in row.shares:
            key = row.currency, (share.category, share.percent)
            before = sums.get(key) or RateSum(
                row.currency, share.category, share.percent, 0, ZERO, ZERO, ZERO
            )
            sums[key] = _added(before, share, is_credit_note=row.is_credit_note)
    return [sums[key] for key in sorted(sums, key=lambda key: (key[0], _by_rate(key[1])))]


def currency_sums(rows: Sequence[JournalRow]) -> list[CurrencySum]:
    """By currency, in the order of their codes."""
    groups: dict[str, list[JournalRow]] = defaultdict(list)
    for row in rows:
        groups[row.currency].append(row)
    return [_currency_sum(currency, groups[currency]) for currency in sorted(groups)]


def _currency_sum(currency: str, rows: Sequence[JournalRow]) -> CurrencySum:
    net, tax, gross = (
        sum((amount for amount in amounts), ZERO)
        for amounts in zip(*((row.net, row.tax, row.gross) for row in rows), strict=True)
    )
    return CurrencySum(currency, len(rows), net, tax, gross)


def _added(before: RateSum, share: TaxShare, *, is_credit_note: bool) -> RateSum:
    invoiced, credited = (ZERO, share.taxable) if is_credit_note else (share.taxable, ZERO)
    return replace(
        before,
        papers=before.papers + 1,
        net_invoiced=before.net_invoiced + invoiced,
        net_credited=before.net_credited + credited,
        tax=before.tax + share.tax,
    )


def _by_rate(key: RateKey) -> tuple[bool, str, Decimal]:
    return key[0] != USUAL, key[0], -key[1]

"""What a period comes to by tax rate, as the books reckon it: for tests that look at the sums themselves."""

from dataclasses import dataclass

from invoicing.domain.journal_rows import CurrencySum, JournalRow, RateSum, currency_sums, rate_sums
from invoicing.domain.tax_periods import BookDay, Period
from invoicing.selectors.sales_journal import sales_journal
from trimops.kernel.scope import Scope


@dataclass(frozen=True)
class TaxSummary:
    """The papers, their sums by rate, and by currency."""

    rows: list[JournalRow]
    rates: list[RateSum]
    currencies: list[CurrencySum]


def tax_summary(scope: Scope, period: Period, by: BookDay = BookDay.ISSUED) -> TaxSummary:
    """By what was invoiced in the period, not by what was paid in it."""
    rows = sales_journal(scope, period, by)
    return TaxSummary(rows, rate_sums(rows), currency_sums(rows))

"""A list of the books for a period, as the table that is shown and written to files."""

from collections.abc import Sequence
from dataclasses import dataclass

from invoicing.documents.book_table import BookTable
from invoicing.documents.book_tables import journal_table, tax_table
from invoicing.documents.mileage_table import mileage_table
from invoicing.documents.payment_tables import open_table, payments_table, write_offs_table
from invoicing.domain.book_parts import BookPart
from invoicing.domain.journal_rows import CurrencySum, JournalRow, currency_sums, rate_sums
from invoicing.domain.tax_periods import BookDay, Period
from invoicing.selectors.mileage_log import mileage_log
from invoicing.selectors.money_rules import money_rules
from invoicing.selectors.open_on import open_on
from invoicing.selectors.payments_journal import payments_journal, write_offs
from invoicing.selectors.sales_journal import sales_journal
from trimops.accounts.models import Business
from trimops.kernel.scope import Scope


@dataclass(frozen=True)
class Books:
    """All lists of a period, and what was sold in it by currency."""

    tables: dict[BookPart, BookTable]
    sold: list[CurrencySum]


def books(business: Business, period: Period, by: BookDay) -> Books:
    """The whole period. BooksDoNotAgree names a paper whose lines are not its totals."""
    journal = sales_journal(Scope(business.pk), period, by)
    tables = {part: _table(business, part, period, journal) for part in BookPart}
    return Books(tables, currency_sums(journal))


def book_table(business: Business, part: BookPart, period: Period, by: BookDay) -> BookTable:
    """One of the lists."""
    needs_journal = part in (BookPart.JOURNAL, BookPart.TAX)
    journal = sales_journal(Scope(business.pk), period, by) if needs_journal else []
    return _table(business, part, period, journal)


def _table(business: Business, part: BookPart, period: Period, journal: Sequence[JournalRow]) -> BookTable:
    scope = Scope(business.pk)
    if part is BookPart.PAYMENTS:
        return payments_table(payments_journal(scope, period))
    if part is BookPart.WRITE_OFFS:
        return write_offs_table(write_offs(scope, period))
    if part is BookPart.OPEN:
        return open_table(open_on(scope, period.last))
    if part is BookPart.MILEAGE:
        log = mileage_log(business, period)
        return mileage_table(log.drives, log.unit.short, business.currency)
    tax_name = money_rules(scope).tax_name
    return (
        journal_table(journal, tax_name)
        if part is BookPart.JOURNAL
        else tax_table(rate_sums(journal), tax_name)
    )

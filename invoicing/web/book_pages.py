"""The books of a period: what was sold and taxed, its lists, and the files for the accountant."""

from dataclasses import dataclass
from decimal import Decimal

from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse
from django.utils.text import slugify

from invoicing.documents.book_table import BookTable
from invoicing.domain.book_parts import BookPart
from invoicing.selectors.book_parts import book_table, books
from invoicing.selectors.money_rules import money_rules
from invoicing.selectors.period_lock import locked_until
from invoicing.web.book_cells import shown_table
from invoicing.web.period_form import AskedPeriod, asked_period
from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.kernel.errors import NotFound
from trimops.web.file_answer import WORKBOOK, file_answer
from trimops.web.page_rates import Cost
from trimops.web.scoped_page import ScopedPage
from visits.documents.csv_file import csv_file
from visits.documents.spreadsheet import spreadsheet

PER_PAGE = 60
CSV = "text/csv; charset=utf-8"


@dataclass(frozen=True)
class ListedPart:
    """A list of the books: how many lines it has, and by currency the sum of its column `main`."""

    part: BookPart
    lines: int
    main: str
    sums: list[tuple[str, Decimal]]


class BookPage(ScopedPage):
    """A page that is asked for a period in its address."""

    does = Action.TAKE_BOOKS

    def asked(self) -> AskedPeriod:
        today = local_day(self.now, self.seat.business.zone)
        return asked_period(self.scope, self.request.GET, today)

    def file_name(self, what: str, asked: AskedPeriod, form: str) -> str:
        """Business, what it is, period."""
        return f"{slugify(self.seat.business.name) or 'books'}_{what}_{asked.period.slug}.{form}"


class BooksPage(BookPage):
    template = "invoicing/books.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        asked = self.asked()
        found = books(self.seat.business, asked.period, asked.by)
        tax = found.tables[BookPart.TAX]
        rules = money_rules(self.scope)
        return self.show(
            {
                "asked": asked,
                "sold": found.sold,
                "tax_name": rules.tax_name,
                "tax": shown_table(tax, tax.table.rows),
                "parts": [_listed(part, table) for part, table in found.tables.items()],
                "locked_until": locked_until(self.scope),
            }
        )


class BookPartPage(BookPage):
    template = "invoicing/book_part.html"

    def get(self, request: HttpRequest, part: str) -> HttpResponse:
        asked, which = self.asked(), _part(part)
        table = book_table(self.seat.business, which, asked.period, asked.by)
        page = Paginator(table.table.rows, PER_PAGE).get_page(request.GET.get("page"))
        listed = _listed(which, table)
        shown = shown_table(table, list(page.object_list))
        return self.show({"asked": asked, "listed": listed, "page": page, "shown": shown})


class BookFile(BookPage):
    """One list as CSV or XLSX."""

    costs = {"get": Cost.EXPORT}

    def get(self, request: HttpRequest, part: str, form: str) -> HttpResponse:
        asked, which = self.asked(), _part(part)
        table = book_table(self.seat.business, which, asked.period, asked.by).table
        name = self.file_name(which.value, asked, form)
        if form == "csv":
            return file_answer(csv_file(table), CSV, name)
        return file_answer(spreadsheet([table], self.now, which.label), WORKBOOK, name)


class BooksFile(BookPage):
    """All lists of the period as one XLSX, a sheet each."""

    costs = {"get": Cost.EXPORT}

    def get(self, request: HttpRequest) -> HttpResponse:
        asked = self.asked()
        found = books(self.seat.business, asked.period, asked.by)
        tables = [table.table for table in found.tables.values()]
        content = spreadsheet(tables, self.now, f"Books, {asked.period.words}")
        return file_answer(content, WORKBOOK, self.file_name("books", asked, "xlsx"))


def _listed(part: BookPart, table: BookTable) -> ListedPart:
    sums = [(currency, sums[table.main]) for currency, sums in table.sums()]
    return ListedPart(part, len(table.table.rows), table.main, sums)


def _part(name: str) -> BookPart:
    if name not in set(BookPart):
        raise NotFound("The books have no such list.")
    return BookPart(name)

"""The books of a period: what was sold, its lists, and the files for the accountant."""

from datetime import date
from decimal import Decimal

from django.http import HttpResponse
from django.utils.text import slugify
from rest_framework import serializers

from invoicing.api.money import MoneyShown
from invoicing.api.periods import PERIOD_AND_DAY, period_asked
from invoicing.documents.book_table import BookTable
from invoicing.domain.book_parts import BookPart
from invoicing.domain.tax_periods import BookDay
from invoicing.selectors.book_parts import book_table, books
from invoicing.selectors.period_lock import locked_until
from trimops.accounts.actions import Action
from trimops.api.asked import WholeNumber
from trimops.api.fields import Day, OneOf
from trimops.api.kinds import FileApi, ToldApi
from trimops.api.op import Op
from trimops.api.view import Api
from trimops.kernel.errors import NotFound
from trimops.web.file_answer import WORKBOOK, file_answer
from trimops.web.page_rates import Cost
from visits.documents.csv_file import csv_file
from visits.documents.data_table import Cell
from visits.documents.spreadsheet import spreadsheet

CSV = "text/csv"
MOST_ROWS = 1000


class SoldShown(serializers.Serializer):  # type: ignore[type-arg]
    """What was sold in one currency, credit notes taken off."""

    currency = serializers.CharField()
    net = MoneyShown()
    tax = MoneyShown()


class ColumnSum(serializers.Serializer):  # type: ignore[type-arg]
    """What one column adds up to, in one currency ("": it is no money)."""

    currency = serializers.CharField()
    column = serializers.CharField()
    sum = serializers.CharField()


class ListedPart(serializers.Serializer):  # type: ignore[type-arg]
    """A list of the books: how many rows it has, and its sums."""

    part = OneOf(BookPart)
    row_count = serializers.IntegerField(min_value=0)
    sums = ColumnSum(many=True)


class BooksTold(serializers.Serializer):  # type: ignore[type-arg]
    """The books of a period."""

    first = Day()
    last = Day()
    by = OneOf(BookDay)
    locked_until = Day(allow_null=True, help_text="Up to that day they are closed.")
    sold = SoldShown(many=True)
    parts = ListedPart(many=True)


class BookTold(serializers.Serializer):  # type: ignore[type-arg]
    """One list of the books. Each row has a cell for each column: text, a number or a day as text, or null."""

    part = OneOf(BookPart)
    first = Day()
    last = Day()
    columns = serializers.ListField(child=serializers.CharField())
    row_count = serializers.IntegerField(min_value=0, help_text="Of the whole list.")
    rows = serializers.ListField(
        child=serializers.ListField(child=serializers.CharField(allow_null=True)),
        help_text="Those asked for.",
    )
    sums = ColumnSum(many=True)


class BookFileApi(FileApi):
    """A file of the books."""

    costs = {"get": Cost.EXPORT}
    also_refuses = (409, 422)

    def name(self, what: str, slug: str, form: str) -> str:
        """Business, what it is, period."""
        return f"{slugify(self.seat.business.name) or 'books'}_{what}_{slug}.{form}"


class BooksApi(ToldApi):
    """What was sold in a period, and the lists that its books are made of. Refused: `books_do_not_agree`."""

    also_refuses = (409, 422)
    ops = {"get": Op(Action.SEE_MONEY, "read_books", "The books", shows=BooksTold, query=PERIOD_AND_DAY)}

    def told(self) -> object:
        period, by = period_asked(self), by_asked(self)
        found = books(self.seat.business, period, by)
        return {
            "first": period.first,
            "last": period.last,
            "by": by,
            "locked_until": locked_until(self.scope),
            "sold": found.sold,
            "parts": [
                {"part": part, "row_count": len(table.table.rows), "sums": sums_of(table)}
                for part, table in found.tables.items()
            ],
        }


class BookApi(ToldApi):
    """One list of the books of a period. Refused: `books_do_not_agree`."""

    also_refuses = (409, 422)
    ops = {
        "get": Op(
            Action.SEE_MONEY,
            "read_book",
            "One list of the books",
            shows=BookTold,
            query={
                **PERIOD_AND_DAY,
                "from_row": WholeNumber(
                    min_value=0, max_value=10_000_000, help_text="The first row shown, from 0."
                ),
                "rows": WholeNumber(
                    min_value=1, max_value=MOST_ROWS, help_text=f"How many; {MOST_ROWS} at most."
                ),
            },
        )
    }

    def told(self) -> object:
        period, part = period_asked(self), part_asked(self)
        found = book_table(self.seat.business, part, period, by_asked(self))
        start = self.asked.get("from_row", 0)
        shown = found.table.rows[start : start + self.asked.get("rows", MOST_ROWS)]
        return {
            "part": part,
            "first": period.first,
            "last": period.last,
            "columns": found.table.headings,
            "row_count": len(found.table.rows),
            "rows": [[cell_text(cell) for cell in row] for row in shown],
            "sums": sums_of(found),
        }


class BookCsv(BookFileApi):
    """One list of the books as CSV. A text that a spreadsheet would run has an apostrophe before it."""

    ops = {"get": Op(Action.TAKE_BOOKS, "read_book_csv", "A list as CSV", media=CSV, query=PERIOD_AND_DAY)}

    def file(self) -> HttpResponse:
        period, part = period_asked(self), part_asked(self)
        table = book_table(self.seat.business, part, period, by_asked(self)).table
        return file_answer(
            csv_file(table), f"{CSV}; charset=utf-8", self.name(part.value, period.slug, "csv")
        )


class BookSpreadsheet(BookFileApi):
    """One list of the books as a spreadsheet."""

    ops = {
        "get": Op(
            Action.TAKE_BOOKS,
            "read_book_xlsx",
            "A list as a spreadsheet",
            media=WORKBOOK,
            query=PERIOD_AND_DAY,
        )
    }

    def file(self) -> HttpResponse:
        period, part = period_asked(self), part_asked(self)
        table = book_table(self.seat.business, part, period, by_asked(self)).table
        name = self.name(part.value, period.slug, "xlsx")
        return file_answer(spreadsheet([table], self.now, part.label), WORKBOOK, name)


class BooksSpreadsheet(BookFileApi):
    """All lists of a period as one spreadsheet, a sheet each."""

    ops = {
        "get": Op(
            Action.TAKE_BOOKS,
            "read_books_xlsx",
            "All lists as a spreadsheet",
            media=WORKBOOK,
            query=PERIOD_AND_DAY,
        )
    }

    def file(self) -> HttpResponse:
        period = period_asked(self)
        found = books(self.seat.business, period, by_asked(self))
        tables = [table.table for table in found.tables.values()]
        content = spreadsheet(tables, self.now, f"Books, {period.words}")
        return file_answer(content, WORKBOOK, self.name("books", period.slug, "xlsx"))


def by_asked(api: Api) -> BookDay:
    """By which of its days an invoice counts."""
    return BookDay(api.asked.get("by", BookDay.ISSUED))


def part_asked(api: Api) -> BookPart:
    """The list that the address names. NotFound for another word."""
    name: str = api.kwargs["part"]
    if name not in set(BookPart):
        raise NotFound("The books have no such list.")
    return BookPart(name)


def sums_of(book: BookTable) -> list[dict[str, str]]:
    """What its columns add up to."""
    return [
        {"currency": currency, "column": column, "sum": f"{amount:f}"}
        for currency, sums in book.sums()
        for column, amount in sums.items()
    ]


def cell_text(cell: Cell) -> str | None:
    """A cell as JSON tells it: a number and a day as text."""
    if isinstance(cell, Decimal):
        return f"{cell:f}"
    return cell.isoformat() if isinstance(cell, date) else None if cell is None else str(cell)

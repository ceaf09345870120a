"""The books on the page, in the files and reckoned again from the rows: one sum."""

import csv
import io
import re
from collections import defaultdict
from datetime import date
from decimal import Decimal as D
from html import unescape

import pytest
from django.test import Client
from django.urls import reverse
from openpyxl import load_workbook

from farms.models import Payer
from invoicing.domain.amounts import RoundingRule
from invoicing.domain.book_parts import BookPart
from invoicing.domain.settling import PaymentMethod
from invoicing.models import Invoice, InvoiceLine
from invoicing.services.note_payment import MoneyReceived, note_payment
from tests.factories import NOON, make_house
from tests.invoicing.booked import booked, discount, line, written_off

FEBRUARY = "?kind=month&first=2026-02-10"
MORE_THAN_A_PAGE = 61


@pytest.fixture
def sold(house):
    """Three rates, a discount on the whole, a credit note, a payment in part, a write-off; names that would run."""
    payer = Payer.objects.create(business=house.business, name="=HYPERLINK(1)")
    house.farm.payer = payer
    house.farm.save()
    first = booked(house.farm, line("33.33", quantity="3"), line("12.34", "5"), line("7", "0", "E"))
    booked(
        house.farm,
        line("0.99", "21", quantity="3"),
        line("1.37", "21", quantity="4"),
        rule=RoundingRule.PER_LINE,
    )
    booked(house.farm, line("100"), whole=[discount("10")], tax_point=date(2026, 1, 30))
    booked(house.farm, line("33.33"), corrects=first)
    booked(house.farm, line("500"), on=date(2026, 3, 1))
    money = MoneyReceived(
        house.farm, date(2026, 2, 20), D("50.00"), "GBP", PaymentMethod.CASH, {first.pk: D("40.00")}
    )
    note_payment(money=money, at=NOON, by=house.office)
    written_off(first, "1.50", date(2026, 2, 25), house.office)
    return house


def cells_of(html: str) -> list[list[str]]:
    """The row of sums of each table, cell by cell."""
    rows = re.findall(r'<tr role="row" class="row-total">(.*?)</tr>', html, re.S)
    cells = [re.findall(r"<t[hd][^>]*>(?:<span[^>]*>)?(.*?)(?:</span>)?</t[hd]>", row, re.S) for row in rows]
    return [[unescape(cell) for cell in row] for row in cells]


def page(office, name, *args, query=FEBRUARY):
    answer = office.get(reverse(name, args=args) + query)
    assert answer.status_code == 200
    return answer


def csv_rows(office, part, query=FEBRUARY):
    text = page(office, "book_csv", part, query=query).content.decode("utf-8-sig")
    return list(csv.DictReader(io.StringIO(text)))


def xlsx_rows(content, sheet=0):
    rows = list(load_workbook(io.BytesIO(content)).worksheets[sheet].values)
    return [dict(zip(rows[0], row, strict=True)) for row in rows[1:]]


def total(rows, heading):
    return sum((D(str(row[heading] or 0)) for row in rows), D(0))


def recomputed(house, first, last):
    """Net and tax by category and rate, from the bare rows and nothing of the books' own code."""
    found = defaultdict(lambda: [D(0), D(0)])
    for paper in Invoice.objects.within(house.scope).filter(issued_on__range=(first, last)):
        sign = -1 if paper.kind == "credit_note" else 1
        found["all"][0] += sign * paper.net
        found["all"][1] += sign * paper.tax
        for row in InvoiceLine.objects.within(house.scope).filter(invoice=paper):
            found[row.tax_percent][0] += sign * row.quantity * row.unit_price
    return found


def test_page_csv_xlsx_and_rows_give_one_sum(sold, office):
    journal, tax = csv_rows(office, "sales-journal"), csv_rows(office, "tax-summary")
    truth = recomputed(sold, date(2026, 2, 1), date(2026, 2, 28))
    sheets = [xlsx_rows(page(office, "book_xlsx", part).content) for part in ("sales-journal", "tax-summary")]
    for rows in (journal, tax, *sheets):
        assert (total(rows, "Net"), total(rows, "VAT")) == tuple(truth["all"])
        assert total(rows, "Total") == sum(truth["all"])
    assert len(journal) == 4
    (sums,) = cells_of(page(office, "books").content.decode())
    assert sums[-3:] == [f"{total(tax, name):,}" for name in ("Net", "VAT", "Total")]
    (sums,) = cells_of(page(office, "book_part", "sales-journal").content.decode())
    assert sums[-3:] == [f"{total(journal, name):,}" for name in ("Net", "VAT", "Total")]


def test_each_rate_is_that_of_its_lines(sold, office):
    truth = recomputed(sold, date(2026, 2, 1), date(2026, 2, 28))
    by_rate = {D(row["Percent"]): D(row["Net"]) for row in csv_rows(office, "tax-summary")}
    truth[D(20)][0] -= 10  # the discount on the whole, which is no line
    assert by_rate == {rate: truth[rate][0] for rate in by_rate}
    journal = csv_rows(office, "sales-journal")
    assert total(journal, "Net at 20 %") == by_rate[D(20)]
    assert total(journal, "Net at 0 % exempt") == by_rate[D(0)]


def test_by_tax_point_a_paper_falls_into_the_month_of_its_work(sold, office):
    january = csv_rows(office, "sales-journal", "?kind=month&first=2026-01-10&by=tax_point")
    assert [row["Net"] for row in january] == ["90.00"]
    assert len(csv_rows(office, "sales-journal", FEBRUARY + "&by=tax_point")) == 3


def test_payments_write_offs_and_what_is_open_are_told(sold, office):
    (paid,) = csv_rows(office, "payments")
    assert (paid["Amount"], paid["Not set against any"], paid["How"]) == ("50.00", "10.00", "Cash")
    assert total(csv_rows(office, "written-off"), "Amount") == D("1.50")
    rows = Invoice.objects.within(sold.scope).filter(issued_on__lte=date(2026, 2, 28))
    gross = sum(paper.sign * paper.payable for paper in rows)
    assert total(csv_rows(office, "open"), "Open") == gross - D("41.50")


def test_what_was_open_on_a_day_does_not_know_what_came_later(sold, office):
    early = csv_rows(office, "open", "?kind=free&first=2026-02-01&last=2026-02-10")
    assert total(early, "Open") == total(early, "Total")


def test_nothing_in_a_file_runs(sold, office):
    assert csv_rows(office, "sales-journal")[0]["Bill to"] == "'=HYPERLINK(1)"
    book = load_workbook(io.BytesIO(page(office, "book_xlsx", "sales-journal").content))
    assert {cell.data_type for row in book.active.iter_rows() for cell in row if cell.value} <= {
        "s",
        "n",
        "d",
    }


def test_one_workbook_holds_every_list_and_is_named_after_business_and_period(sold, office):
    answer = page(office, "books_file")
    assert 'filename="ash-rye-foot-trimming_books_2026-02.xlsx"' in answer["Content-Disposition"]
    book = load_workbook(io.BytesIO(answer.content))
    assert len(book.sheetnames) == len(BookPart)
    assert book.properties.title == "Books, February 2026"


def test_a_long_list_is_shown_by_the_page_and_summed_as_a_whole(house, office):
    for _ in range(MORE_THAN_A_PAGE):
        booked(house.farm, line("1", "0", "Z"))
    html = page(office, "book_part", "sales-journal").content.decode()
    assert html.count('<th role="rowheader"') == MORE_THAN_A_PAGE
    assert cells_of(html)[0][-1] == f"{MORE_THAN_A_PAGE}.00"
    assert "1 to 60 of 61" in html


def test_another_business_sees_nothing_of_it(sold):
    stranger = make_house("Elsewhere Trimming")
    client = Client()
    client.force_login(stranger.office)
    assert "nothing was sold" in client.get(reverse("books") + FEBRUARY).content.decode()
    assert csv_rows(client, "open") == []


@pytest.mark.parametrize(
    "query", ["", "?kind=quarter&first=2026-02-10", "?kind=free&first=2026-05-01&last=2026-01-01"]
)
def test_any_period_can_be_asked_for(house, office, query):
    page(office, "books", query=query)
    assert office.get(reverse("book_part", args=["nonsense"])).status_code == 404

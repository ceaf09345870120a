from datetime import date
from decimal import Decimal

import pytest

from invoicing.domain.tax_periods import BookDay, PeriodKind, free_period, month_of
from invoicing.models import Invoice, MoneyRules
from invoicing.selectors.books_period import books_period
from invoicing.selectors.invoice_rows import years_issued
from invoicing.selectors.sales_journal import BooksDoNotAgree, sales_journal
from tests.factories import make_house
from tests.invoicing.booked import ISSUED_ON, booked, line
from tests.invoicing.tax_summary import tax_summary

FEBRUARY = month_of(ISSUED_ON)


def test_a_paper_whose_lines_are_not_its_totals_stops_the_books(house):
    paper = booked(house.farm, line("100"), wrong_tax=Decimal(19))
    with pytest.raises(BooksDoNotAgree, match=paper.number):
        sales_journal(house.scope, FEBRUARY)


def test_it_takes_three_queries_however_many_papers(house, django_assert_num_queries):
    first = booked(house.farm, line("100"))
    booked(house.farm, line("50"), corrects=first)
    with django_assert_num_queries(3):
        rows = sales_journal(house.scope, FEBRUARY)
    assert [(row.is_credit_note, row.gross, row.corrects) for row in rows] == [
        (True, -60, first.number),
        (False, 120, ""),
    ]


def test_drafts_and_other_businesses_are_left_out(house):
    stranger = make_house("Elsewhere Trimming")
    booked(stranger.farm, line("100"))
    Invoice.objects.create(
        business=house.business,
        farm=house.farm,
        currency="GBP",
        tax_point=ISSUED_ON,
        drafted_at="2026-02-02T12:00Z",
    )
    assert tax_summary(house.scope, FEBRUARY).rows == []
    assert list(years_issued(house.scope)) == []


def test_the_first_and_the_last_day_of_a_period_are_inside(house):
    booked(house.farm, line("1"), on=FEBRUARY.first, tax_point=date(2026, 1, 1))
    booked(house.farm, line("1"), on=FEBRUARY.last)
    assert len(sales_journal(house.scope, FEBRUARY)) == 2
    assert len(sales_journal(house.scope, FEBRUARY, BookDay.TAX_POINT)) == 1
    assert len(sales_journal(house.scope, free_period(FEBRUARY.last, FEBRUARY.last))) == 1


def test_quarters_begin_where_the_books_do(house):
    MoneyRules.objects.create(business=house.business, books_begin_month=2)
    assert books_period(house.scope, PeriodKind.QUARTER, date(2026, 1, 5)).first == date(2025, 11, 1)
    free = books_period(house.scope, PeriodKind.FREE, date(2026, 1, 5), date(2026, 1, 9))
    assert (free.first, free.last) == (date(2026, 1, 5), date(2026, 1, 9))

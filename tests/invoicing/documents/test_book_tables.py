from decimal import Decimal as D

import pytest

from invoicing.documents.book_tables import journal_table, rate_words, tax_table
from invoicing.domain.journal_rows import rate_sums
from tests.invoicing.documents.book_rows import FREE, USUAL, journal_row

ROWS = [journal_row(USUAL, FREE), journal_row(USUAL, sign=-1, number="CN-1")]


@pytest.mark.parametrize(
    ("key", "words"),
    [
        (("S", D("20.00")), "20 %"),
        (("S", D("5.50")), "5.5 %"),
        (("E", D(0)), "0 % exempt"),
        (("AE", D("0.00")), "0 % reverse charge"),
    ],
)
def test_rates_are_told_in_words(key, words):
    assert rate_words(key) == words


def test_the_journal_has_net_and_tax_of_each_rate_that_occurs():
    journal = journal_table(ROWS, "VAT")
    first, second = (dict(zip(journal.table.headings, row, strict=True)) for row in journal.table.rows)
    assert (first["Net at 20 %"], first["VAT at 20 %"], first["Net at 0 % exempt"]) == (100, 20, 10)
    assert (second["Kind"], second["Corrects"], second["Total"]) == ("Credit note", "INV-1", -120)
    assert second["Net at 0 % exempt"] is None


def test_what_the_page_shows_are_columns_of_the_file():
    for found in (journal_table(ROWS, "VAT"), tax_table(rate_sums(ROWS), "VAT")):
        assert {*found.shown, *found.summed} <= set(found.table.headings)


def test_the_summary_adds_up_to_the_journal():
    ((_, journal),) = journal_table(ROWS, "VAT").sums()
    ((_, summary),) = tax_table(rate_sums(ROWS), "VAT").sums()
    assert {name: journal[name] for name in ("Net", "VAT", "Total")} == {
        name: summary[name] for name in ("Net", "VAT", "Total")
    }
    assert (summary["Net of invoices"], summary["Net of credit notes"]) == (110, -100)


def test_a_period_without_papers_has_a_head_alone():
    assert journal_table([], "VAT").table.rows == []

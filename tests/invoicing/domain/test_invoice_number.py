"""Numbers as they are written, and the series they are of."""

from datetime import date

import pytest

from invoicing.domain.creditor_reference import creditor_reference
from invoicing.domain.invoice_number import RUNS_ON, invoice_number, series_without_signs, series_year


@pytest.mark.parametrize(
    ("prefix", "year", "counter", "expected"),
    [
        ("INV", 2026, 1, "INV-2026-0001"),
        ("INV", 2026, 42, "INV-2026-0042"),
        ("CN", 2026, 12_345, "CN-2026-12345"),
        ("INV", RUNS_ON, 7, "INV-0007"),
    ],
)
def test_a_number_is_prefix_year_and_counter(prefix, year, counter, expected):
    assert invoice_number(prefix, year, counter) == expected


def test_numbers_start_at_one():
    with pytest.raises(ValueError, match="start at 1"):
        invoice_number("INV", 2026, 0)


def test_a_series_is_of_the_year_or_runs_on():
    day = date(2027, 1, 1)
    assert (series_year(day, by_year=True), series_year(day, by_year=False)) == (2027, RUNS_ON)


def test_series_that_differ_in_signs_alone_are_one_in_a_creditor_reference():
    series = [("INV", 2026), ("INV-2026", RUNS_ON), ("INV/2026", RUNS_ON), ("I-N/V2026", RUNS_ON)]
    assert {series_without_signs(*each) for each in series} == {"INV2026"}
    assert creditor_reference("INV-2026-0001") == creditor_reference("INV2026-0001")

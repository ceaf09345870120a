"""How an invoice number is written, and which series it is of."""

from datetime import date

from invoicing.domain.creditor_reference import letters_and_digits

RUNS_ON = 0
"""In the place of the year: the series does not begin anew."""


def series_year(day: date, *, by_year: bool) -> int:
    """The year that a number given on `day` is counted in, or RUNS_ON."""
    return day.year if by_year else RUNS_ON


def invoice_number(prefix: str, year: int, counter: int) -> str:
    """Prefix, year of issue unless the series runs on, running number of at least four digits.

    INV-2026-0042, or INV-0042. ValueError below 1.
    """
    if counter < 1:
        raise ValueError("invoice numbers start at 1")
    return f"{prefix}-{counter:04d}" if year == RUNS_ON else f"{prefix}-{year}-{counter:04d}"


def series_without_signs(prefix: str, year: int) -> str:
    """What a creditor reference (ISO 11649) keeps of the series: INV-2026, INV/2026 and INV2026 are one there."""
    told = prefix if year == RUNS_ON else f"{prefix}{year}"
    return letters_and_digits(told)

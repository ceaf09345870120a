import pytest

from invoicing.domain.invoice_number import invoice_number


@pytest.mark.parametrize(
    ("counter", "number"),
    [(1, "INV-2026-0001"), (42, "INV-2026-0042"), (9999, "INV-2026-9999"), (10000, "INV-2026-10000")],
)
def test_a_number_has_prefix_year_and_counter(counter, number):
    assert invoice_number("INV", 2026, counter) == number


def test_numbers_start_at_one():
    with pytest.raises(ValueError, match="start at 1"):
        invoice_number("INV", 2026, 0)

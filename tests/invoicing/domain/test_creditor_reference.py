import pytest

from invoicing.domain.creditor_reference import creditor_reference


def test_the_number_stands_in_its_reference_without_signs():
    assert creditor_reference("inv-2026/0042") == "RF73INV20260042"


@pytest.mark.parametrize("number", ["", "-/", "ÆØ"])
def test_a_number_without_letters_or_digits_has_none(number):
    with pytest.raises(ValueError, match="at least one"):
        creditor_reference(number)


def test_a_number_too_long_for_the_standard_is_refused():
    with pytest.raises(ValueError, match="at most 21"):
        creditor_reference("A" * 22)

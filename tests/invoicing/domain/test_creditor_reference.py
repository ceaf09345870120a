import pytest

from invoicing.domain.creditor_reference import creditor_reference, reads_as_creditor_reference


def test_the_number_stands_in_its_reference_without_signs():
    assert creditor_reference("inv-2026/0042") == "RF73INV20260042"


@pytest.mark.parametrize("number", ["", "-/", "ÆØ"])
def test_a_number_without_letters_or_digits_has_none(number):
    with pytest.raises(ValueError, match="at least one"):
        creditor_reference(number)


def test_a_number_too_long_for_the_standard_is_refused():
    with pytest.raises(ValueError, match="at most 21"):
        creditor_reference("A" * 22)


def test_a_reference_is_read_in_the_groups_that_banks_print():
    assert reads_as_creditor_reference(" rf73 INV2 0260 042 ") == "RF73INV20260042"


@pytest.mark.parametrize(
    "text", ["", "RF", "RF73INV20260043", "INV20260042", "RFXXINV20260042", "RF73" + "A" * 22]
)
def test_what_is_no_sound_reference_is_none(text):
    assert reads_as_creditor_reference(text) is None


def test_two_digits_swapped_are_found():
    assert reads_as_creditor_reference("RF73INV20260024") is None

import pytest

from invoicing.domain.bank_account import clean_bic, clean_iban, in_fours


def test_blanks_and_small_letters_are_mended():
    assert clean_iban(" gb29 nwbk 6016 1331 9268 19 ") == "GB29NWBK60161331926819"


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("", "empty"),
        ("GB29-NWBK", "letters and digits only"),
        ("GB29NWBK6016133192681٩", "letters and digits only"),
        ("GB29", "this one has 4"),
        ("GB29NWBK60161331926818", "typing mistake"),
        ("US64SVBKUS6S3300958879", "country that has IBANs"),
    ],
)
def test_what_is_wrong_is_said(text, what):
    with pytest.raises(ValueError, match=what):
        clean_iban(text)


def test_an_account_with_sound_digits_but_of_the_wrong_build_is_refused():
    """Check digits computed for a German account that is one digit short (ISO 13616: 18 digits)."""
    with pytest.raises(ValueError, match="its country builds"):
        clean_iban("DE5137040044053201300")


@pytest.mark.parametrize("text", ["nwbkgb2l", "NWBKGB2LXXX", "BFSW DE33 BER"])
def test_a_bic_has_8_or_11_signs(text):
    assert clean_bic(text) == "".join(text.split()).upper()


@pytest.mark.parametrize("text", ["", "NWBKGB2", "NWBK1B2L", "NWBKGB2LXX"])
def test_what_is_no_bic_is_refused(text):
    with pytest.raises(ValueError, match="8 or 11 signs"):
        clean_bic(text)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("GB29NWBK60161331926819", "GB29 NWBK 6016 1331 9268 19"),
        ("RF18539007547034", "RF18 5390 0754 7034"),
        ("RF 8820260042", "RF88 2026 0042"),
        ("", ""),
    ],
)
def test_an_account_and_a_reference_are_printed_in_groups_of_four(text, told):
    assert in_fours(text) == told

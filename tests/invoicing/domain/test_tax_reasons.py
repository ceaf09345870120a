import pytest

from invoicing.domain.code_lists import EXEMPTION_CODES
from invoicing.domain.tax_reasons import reason_and_code


@pytest.mark.parametrize(("category", "words"), [("AE", "Reverse charge"), ("O", "Not subject to VAT")])
def test_a_category_with_one_meaning_says_it_by_itself(category, words):
    reason, code = reason_and_code(category, "", "")
    assert reason == words
    assert code in EXEMPTION_CODES


def test_why_something_is_exempt_is_never_made_up():
    assert reason_and_code("E", "", "") == ("", "")


@pytest.mark.parametrize("given", [("Our words", ""), ("", "VATEX-EU-AE"), ("Our words", "VATEX-EU-AE")])
def test_what_was_handed_in_stays(given):
    assert reason_and_code("AE", *given) == given

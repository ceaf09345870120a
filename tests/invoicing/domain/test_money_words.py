from decimal import Decimal

from invoicing.domain.money_words import in_words


def test_amounts_have_the_decimals_of_their_currency():
    assert in_words(Decimal("1234.5000"), "EUR") == "1,234.50 EUR"
    assert in_words(Decimal("1234.0000"), "JPY") == "1,234 JPY"
    assert in_words(Decimal("1.2345"), "BHD") == "1.235 BHD"

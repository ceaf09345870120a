import pytest

from invoicing.domain.minor_units import minor_digits


@pytest.mark.parametrize(("currency", "digits"), [("GBP", 2), ("EUR", 2), ("JPY", 0), ("ISK", 0), ("KWD", 3)])
def test_a_currency_has_the_decimals_of_the_standard(currency, digits):
    assert minor_digits(currency) == digits

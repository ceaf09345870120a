import pytest

from invoicing.domain.tax_number import tax_number_with_country


@pytest.mark.parametrize(
    ("text", "country", "number"),
    [
        ("980 7806 84", "GB", "GB980780684"),
        ("GB 980 7806 84", "GB", "GB980780684"),
        ("GB980780684", "IE", "GB980780684"),
        ("094259216", "GR", "EL094259216"),
        ("U13585627", "AT", "ATU13585627"),
        ("12-3456789", "US", "US123456789"),
        ("XI980780684", "GB", "XI980780684"),
        ("", "GB", ""),
        (" - ", "GB", ""),
    ],
)
def test_the_letters_of_the_country_stand_in_front_once(text, country, number):
    assert tax_number_with_country(text, country) == number

import pytest

from invoicing.domain.tax_number import tax_number_fault, tax_number_with_country


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


@pytest.mark.parametrize(("text", "country"), [("980 7806 84", "GB"), ("U13585627", "AT"), ("", "GB")])
def test_a_sound_number_has_no_fault(text, country):
    assert tax_number_fault(text, country) is None


def test_a_typing_mistake_is_told_from_a_wrong_build():
    assert "typing mistake" in (tax_number_fault("GB123456789", "GB") or "")
    assert "not built" in (tax_number_fault("GB12", "GB") or "")


def test_numbers_of_other_countries_are_left_alone():
    assert tax_number_fault("12-3456789", "US") is None

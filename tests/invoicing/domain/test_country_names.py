from invoicing.domain import country_names
from invoicing.domain.code_lists import COUNTRIES
from invoicing.domain.country_names import abroad, country_name


def test_every_code_is_one_of_iso_3166():
    assert set(country_names._NAMES) <= COUNTRIES


def test_a_country_is_said_in_words_or_by_its_code():
    assert [country_name(code) for code in ("IE", "fr", "ZW", "")] == ["Ireland", "France", "ZW", ""]


def test_only_an_address_abroad_ends_with_its_country():
    assert abroad("FR", "DE") == "France"
    assert abroad("DE", "DE") == abroad("", "DE") == abroad("FR", "") == ""

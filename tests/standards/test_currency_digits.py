"""Decimals of every currency against the ISO 4217 list (fixtures/standards/iso4217_minor_units.json)."""

from iso4217 import Currency

from invoicing.domain.minor_units import OTHER_THAN_TWO, minor_digits


def test_every_currency_of_the_list_has_its_published_decimals(published):
    listed = published("iso4217_minor_units.json")["minor_units"]
    assert len(listed) > 150
    assert {code: minor_digits(code) for code in listed} == listed


def test_our_exceptions_are_all_on_the_list(published):
    assert set(OTHER_THAN_TWO) <= set(published("iso4217_minor_units.json")["minor_units"])


def test_another_hands_list_of_iso_4217_has_the_same_decimals():
    """PyPI package iso4217; codes without a minor unit there (gold, testing) are no money."""
    listed = {currency.code: currency.exponent for currency in Currency if currency.exponent is not None}
    assert len(listed) > 150
    assert {code: minor_digits(code) for code in listed} == listed

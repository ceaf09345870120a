"""Check digits of creditor references and accounts, from fixtures/standards/finance_checks.json."""

import pytest
from stdnum import iso11649

from invoicing.domain.bank_account import clean_iban
from invoicing.domain.creditor_reference import creditor_reference
from invoicing.domain.match_words import references_in


@pytest.fixture
def check(published):
    checks = {one["id"]: one for one in published("finance_checks.json")}
    return checks.__getitem__


def test_iso_11649_references_are_the_published_ones(check):
    entry = check("rf")
    pairs = list(zip(entry["input"].split("; "), entry["expected"].split("; "), strict=True))
    assert len(pairs) == 3
    assert [creditor_reference(number) for number, _ in pairs] == [reference for _, reference in pairs]


@pytest.mark.parametrize("number", ["INV-2026-0042", "1", "A" * 21, "CN/2027/00001"])
def test_the_reference_library_takes_each_reference_we_make_and_no_slip(number):
    ours = creditor_reference(number)
    assert iso11649.is_valid(ours)
    slip = ours[:-1] + ("0" if ours[-1] != "0" else "1")
    assert not iso11649.is_valid(slip)
    assert (list(references_in(ours, {ours})), list(references_in(slip, {ours}))) == ([ours], [])


def test_published_ibans_are_taken_and_their_slips_are_not(check):
    ibans = check("iban")["input"].split(", ")
    assert len(ibans) == 5
    for iban in ibans:
        assert clean_iban(iban) == iban
        with pytest.raises(ValueError, match="typing mistake"):
            clean_iban(iban[:-1] + str((int(iban[-1]) + 1) % 10))


def test_the_belgian_example_that_fails_its_own_countrys_check_is_taken(check):
    iban = check("iban-belgium-trap")["input"]
    assert clean_iban(iban) == iban

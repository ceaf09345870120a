"""Transponder codes against the layout of ISO 11784 (source in fixtures/standards/iso11784_codes.json)."""

import pytest

from farms.domain.electronic_id import ElectronicId, NationalIdTooLarge, pack, read_electronic_id, unpack


def test_codes_are_packed_as_the_layout_says(published):
    for case in published("iso11784_codes.json")["codes"]:
        eid = ElectronicId(case["country"], case["national_id"])
        assert f"{pack(eid):016X}" == case["code"]
        assert unpack(int(case["code"], 16)) == eid


def test_the_largest_national_id_is_38_bits(published):
    largest = published("iso11784_codes.json")["largest_national_id"]
    assert ElectronicId(826, largest).printed == f"826{largest}"
    with pytest.raises(NationalIdTooLarge):
        ElectronicId(826, largest + 1)


def test_a_real_uk_tag_does_not_fit_in_a_transponder():
    """UK 284205 700016 is a valid tag (tag_check_digits.json), yet too large for 38 bits."""
    with pytest.raises(NationalIdTooLarge):
        read_electronic_id("826284205700016")


def test_us_numbers_of_the_published_examples_can_be_read():
    """840003123456789: example of the ICAR animal data exchange documentation."""
    assert read_electronic_id("840 003123456789") == ElectronicId(840, 3123456789)

import pytest
from hypothesis import given
from hypothesis import strategies as st

from farms.domain.electronic_id import (
    MAX_NATIONAL_ID,
    CountryOutOfRange,
    ElectronicId,
    FieldOutOfRange,
    NationalIdTooLarge,
    NotAnElectronicId,
    WrongLength,
    normalise_electronic_id,
    pack,
    read_electronic_id,
    unpack,
)


@pytest.mark.parametrize("text", ["826123450600001", "826 123450600001", " 826-1234.5060 0001 "])
def test_the_fifteen_digits_are_read_however_they_were_spaced(text):
    assert normalise_electronic_id(text) == "826123450600001"


def test_it_is_shown_with_a_space_after_the_country():
    assert read_electronic_id("826123450600001").display == "826 123450600001"


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        ("82612345060000", WrongLength),
        ("82612345060000X", WrongLength),
        ("٨٢٦١٢٣٤٥٠٦٠٠٠٠١", WrongLength),
        ("", WrongLength),
        ("000123450600001", CountryOutOfRange),
        ("826274877906944", NationalIdTooLarge),
    ],
)
def test_what_is_no_electronic_id_is_refused_by_name(text, fault):
    with pytest.raises(fault):
        read_electronic_id(text)
    assert issubclass(fault, NotAnElectronicId)


@pytest.mark.parametrize("field", [{"retagging": 8}, {"user_info": 32}, {"reserved": 64}, {"retagging": -1}])
def test_a_small_field_that_is_too_large_for_its_bits_is_refused(field):
    with pytest.raises(FieldOutOfRange):
        ElectronicId(826, 1, **field)


@pytest.mark.parametrize("code", [-1, 2**64])
def test_a_code_of_more_than_64_bits_is_refused(code):
    with pytest.raises(FieldOutOfRange):
        unpack(code)


@pytest.mark.parametrize(
    ("country", "by_manufacturer", "for_tests"),
    [(826, False, False), (900, True, False), (998, True, False), (999, False, True)],
)
def test_codes_from_900_name_makers_and_999_is_for_tests(country, by_manufacturer, for_tests):
    eid = ElectronicId(country, 1)
    assert (eid.is_by_manufacturer, eid.is_for_tests) == (by_manufacturer, for_tests)


@given(
    st.builds(
        ElectronicId,
        country=st.integers(1, 999),
        national_id=st.integers(0, MAX_NATIONAL_ID),
        is_animal=st.booleans(),
        retagging=st.integers(0, 7),
        user_info=st.integers(0, 31),
        reserved=st.integers(0, 63),
        has_data_block=st.booleans(),
    )
)
def test_packing_loses_nothing(eid):
    assert unpack(pack(eid)) == eid
    assert pack(eid) < 2**64

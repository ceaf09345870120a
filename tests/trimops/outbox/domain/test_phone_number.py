import pytest

from trimops.outbox.domain.phone_number import NoSuchNumber, mobile_number

# Numbers that regulators keep for films and the like where there are such (from memory), else made up.
WRITTEN = [
    ("07700 900123", "GB", "+447700900123"),
    ("+44 7700 900123", "GB", "+447700900123"),
    ("+44 (0)7700 900123", "GB", "+447700900123"),
    ("0044 7700 900123", "GB", "+447700900123"),
    ("07700-900 123", "gb", "+447700900123"),
    ("085 012 3456", "IE", "+353850123456"),
    ("+353 85 012 3456", "GB", "+353850123456"),
    ("06 12345678", "NL", "+31612345678"),
    ("0151 23456789", "DE", "+4915123456789"),
    ("06 12 34 56 78", "FR", "+33612345678"),
    ("0491 570 156", "AU", "+61491570156"),
    ("(212) 555-0123", "US", "+12125550123"),
    ("+44 7700 900123", "", "+447700900123"),
]
WRONG = [
    ("", "GB", "no telephone number"),
    ("ring Ann", "GB", "no telephone number"),
    ("07700 900123", "", "no telephone number"),
    ("07700 9001", "GB", "no such"),
    ("07700 900123 4", "GB", "no such"),
    ("+999 12345678", "GB", "no telephone number"),
    ("0113 496 0123", "GB", "no mobile"),
    ("0909 879 0123", "GB", "no mobile"),
    ("0800 1111", "GB", "no mobile"),
    ("999", "GB", "no such"),
    ("+44 7700 900123\nBcc: x@y.example", "GB", "no telephone number|no such"),
]


@pytest.mark.parametrize(("written", "country", "number"), WRITTEN)
def test_a_number_is_found_however_it_is_written(written, country, number):
    assert mobile_number(written, country) == number


@pytest.mark.parametrize(("written", "country", "words"), WRONG)
def test_a_number_that_takes_no_texts_is_told_why(written, country, words):
    with pytest.raises(NoSuchNumber, match=words):
        mobile_number(written, country)

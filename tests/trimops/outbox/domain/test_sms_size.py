"""Held against a table written from memory of 3GPP TS 23.038 and of what operators publish; no copy was at hand."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trimops.outbox.domain.sms_size import EXTENDED, PLAIN, SmsSize, foreign_signs, sms_size

# text, plain?, units, parts
TABLE = [
    ("", True, 0, 1),
    ("a" * 160, True, 160, 1),
    ("a" * 161, True, 161, 2),
    ("a" * 306, True, 306, 2),
    ("a" * 307, True, 307, 3),
    ("a" * 459, True, 459, 3),
    ("a" * 460, True, 460, 4),
    ("€" * 80, True, 160, 1),
    ("€" * 80 + "a", True, 161, 2),
    ("€" * 76 + "a", True, 153, 1),
    # 153 is odd: the 77th of two septets does not fit beside 76, so each part holds 76 of them
    ("€" * 152, True, 304, 2),
    ("€" * 153, True, 306, 3),
    ("a" * 152 + "€" + "a" * 152, True, 306, 3),
    ("å" * 160, True, 160, 1),
    ("ê" * 70, False, 70, 1),
    ("ê" * 71, False, 71, 2),
    ("ê" * 134, False, 134, 2),
    ("ê" * 135, False, 135, 3),
    ("a" * 69 + "ŵ", False, 70, 1),
    ("a" * 70 + "ŵ", False, 71, 2),
    ("🐄" * 35, False, 70, 1),
    ("🐄" * 36, False, 72, 2),
    # 67 is odd as well: 33 cows to a part
    ("🐄" * 66, False, 132, 2),
    ("🐄" * 67, False, 134, 3),
    ("{visit}", True, 9, 1),
    ("`", False, 1, 1),
    ("ç", False, 1, 1),
    ("Ç", True, 1, 1),
    ("Line one\nline two", True, 17, 1),
    ("\u2019", False, 1, 1),
    ("\t", False, 1, 1),
]


@pytest.mark.parametrize(("text", "is_plain", "units", "parts"), TABLE, ids=lambda value: ascii(value)[:12])
def test_a_text_takes_so_many_parts(text, is_plain, units, parts):
    assert sms_size(text) == SmsSize(is_plain, units, parts)


def test_the_tables_have_the_signs_of_the_standard_once_each():
    assert (len(PLAIN), len(set(PLAIN)), len(EXTENDED)) == (127, 127, 10)
    assert not set(PLAIN) & set(EXTENDED)
    assert [PLAIN.index(sign) for sign in "@ Aaè"] == [0x00, 0x20 - 1, 0x41 - 1, 0x61 - 1, 0x04]


@given(st.text(max_size=400), st.text(max_size=40))
def test_a_longer_text_never_takes_fewer_parts(text, more):
    assert sms_size(text + more).parts >= sms_size(text).parts


@given(st.text(alphabet=PLAIN + EXTENDED, max_size=400))
def test_parts_are_as_many_as_a_phone_would_cut(text):
    size = sms_size(text)
    assert size.is_plain
    if size.units > 160:
        assert -(-size.units // 153) <= size.parts <= -(-size.units // 152)


def test_the_signs_that_make_a_text_wide_are_named_once():
    assert foreign_signs("Bwlch-y-ŵŷn ŵ 🐄 ok") == "ŵŷ🐄"
    assert foreign_signs("plain [text] €5") == ""

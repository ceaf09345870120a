import pytest
from hypothesis import given
from hypothesis import strategies as st

from farms.domain.ear_tag import (
    UnreadableTag,
    ear_tag_display,
    ear_tag_hint,
    normalise_ear_tag,
    read_ear_tag,
    uk_check_digit,
)


@pytest.mark.parametrize(
    ("written", "kept"),
    [
        ("UK 123450 600001", "UK123450600001"),
        (" uk-123450.600001 ", "UK123450600001"),
        ("GB123450600001", "UK123450600001"),
        ("123450600001", "UK123450600001"),
        ("IE 372214 00123", "IE37221400123"),
        ("GR 1234567890", "EL1234567890"),
        ("UK AB1234 00012", "UKAB123400012"),
        ("276 0312312345", "2760312312345"),
    ],
)
def test_a_tag_is_kept_in_one_form_however_it_was_written(written, kept):
    assert normalise_ear_tag(written) == kept


@pytest.mark.parametrize(
    ("tag", "shown"),
    [
        ("UK123450600001", "UK 123450 600001"),
        ("IE37221400123", "IE 37221400123"),
        ("what is this?", "what is this?"),
    ],
)
def test_a_tag_is_shown_with_spaces(tag, shown):
    assert ear_tag_display(tag) == shown


@pytest.mark.parametrize(
    ("tag", "words"),
    [
        ("UK 123450 500001", "check digit does not fit: expected 6"),
        ("UK 123450 800001", "check digit does not fit: expected 6"),
        ("UK 12345 60001", "12 figures after the letters, this has 10"),
        ("UK AB1234 00012", "before July 2000"),
        ("ZZ 1234567890", "ZZ is not a country"),
        ("IE 12A4567", "letters after the country"),
        ("826 123450600001", "is this the electronic id?"),
        ("hello, cow", "not the form of an official tag"),
    ],
)
def test_a_tag_that_looks_misread_is_asked_about(tag, words):
    assert words in ear_tag_hint(tag)


@pytest.mark.parametrize("tag", ["UK123450600001", "IE37221400123", "XI1234567", "EL1234567890"])
def test_a_tag_in_order_raises_no_question(tag):
    assert ear_tag_hint(tag) == ""


def test_a_tag_in_none_of_the_forms_is_still_kept_as_it_was_read():
    assert normalise_ear_tag(" cow-7 ! ") == "COW7!"
    with pytest.raises(UnreadableTag):
        read_ear_tag("cow 7 !")


herd_marks, animals = st.integers(0, 999_999), st.integers(0, 99_999)


@given(herd_marks, animals)
def test_every_tag_made_by_the_rule_passes_it(herd, animal):
    tag = f"UK{herd:06d}{uk_check_digit(herd, animal)}{animal:05d}"
    assert ear_tag_hint(tag) == ""
    assert normalise_ear_tag(ear_tag_display(tag)) == tag


@given(herd_marks, animals, st.integers(1, 6))
def test_a_wrong_check_digit_is_always_noticed(herd, animal, slip):
    wrong = (uk_check_digit(herd, animal) - 1 + slip) % 7 + 1
    assert "check digit" in ear_tag_hint(f"UK{herd:06d}{wrong}{animal:05d}")

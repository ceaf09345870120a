"""Texts with named places."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.messages.text_template import TextMakesNoSense, check_text, fill, places_used, tidy

PLACES = ("farm", "day")


@pytest.mark.parametrize(
    "text", ["", "no place", "{farm}", "{farm}{day}", "At {farm} on {day}.", "100 % (sure) £5"]
)
def test_a_text_of_known_places_is_taken(text):
    check_text(text, PLACES)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("{cow}", "There is no {cow} here"),
        ("{}", "There is no {} here"),
        ("{farm.address}", "There is no {farm.address}"),
        ("{farm!r}", "There is no {farm!r}"),
        ("{0}", "There is no {0}"),
        ("{ farm }", "There is no { farm }"),
        ("{{farm}}", "A brace stands alone"),
        ("{farm", "A brace stands alone near “{farm”"),
        ("farm}", "A brace stands alone"),
        ("{farm}}", "A brace stands alone"),
        ("{fa\nrm}", "A brace stands alone"),
        ("{% now %}", "There is no {% now %}"),
        ("{{ secret }}", "There is no { secret }"),
    ],
)
def test_what_is_unknown_or_not_closed_is_refused_with_a_word(text, says):
    with pytest.raises(TextMakesNoSense) as refused:
        check_text(text, PLACES, "body")
    assert refused.value.field == "body"
    assert says in refused.value.message


def test_the_refusal_says_what_there_is():
    with pytest.raises(TextMakesNoSense, match=r"may use: \{farm\}, \{day\}"):
        check_text("{cow}", PLACES)


def test_a_place_that_is_needed_must_be_there_unless_the_text_is_empty():
    check_text("", PLACES, needs=("day",))
    check_text("On {day}", PLACES, needs=("day",))
    with pytest.raises(TextMakesNoSense, match=r"Put \{day\} somewhere"):
        check_text("On Monday", PLACES, needs=("day",))


def test_what_is_put_in_a_place_is_never_read_again():
    values = {"farm": "{day} {secret} {0}", "day": "Monday"}
    assert fill("{farm} on {day}", values) == "{day} {secret} {0} on Monday"


@given(st.text(), st.text())
def test_any_text_that_is_taken_can_be_filled_with_anything(text, value):
    try:
        check_text(text, PLACES)
    except TextMakesNoSense:
        return
    filled = fill(text, {"farm": value, "day": value})
    assert len(filled) >= len(text) - 6 * text.count("{")
    assert ("{" in filled) <= ("{" in value)


def test_blanks_of_a_place_without_a_word_are_tidied_away():
    assert tidy("Hello  you ,\n\n\n\nrest \n  end ") == "Hello you ,\n\nrest\nend"


def test_the_places_of_a_text():
    assert places_used("{farm} and {day}, {farm}") == {"farm", "day"}

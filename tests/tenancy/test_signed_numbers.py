"""Short signed words."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trimops.settings.hide_secrets import hide_secrets
from trimops.tenancy.signed_numbers import numbers_of, signed_numbers

NUMBERS = st.lists(st.integers(0, 2**63), min_size=1, max_size=3)


@given(NUMBERS)
def test_a_word_names_what_it_was_made_for(numbers):
    assert numbers_of("stop", signed_numbers("stop", *numbers)) == tuple(numbers)
    assert numbers_of("list", signed_numbers("stop", *numbers)) is None


@given(NUMBERS, st.integers(0, 100), st.characters(codec="ascii"))
def test_a_word_with_one_letter_changed_names_nothing(numbers, place, letter):
    word = signed_numbers("stop", *numbers)
    place %= len(word)
    changed = word[:place] + letter + word[place + 1 :]
    assert changed == word or numbers_of("stop", changed) is None


@given(st.text())
def test_any_other_text_names_nothing(text):
    assert numbers_of("stop", text) is None


def test_a_number_below_nought_is_no_row():
    with pytest.raises(ValueError, match="below 0"):
        signed_numbers("stop", -1)


def test_a_word_is_short_and_hidden_from_the_log():
    word = signed_numbers("stop", 3)
    assert len(word) == 24
    assert word not in hide_secrets(f"GET /stop/{word}/ 200")


def test_the_secret_key_makes_the_words(settings):
    word = signed_numbers("stop", 3)
    settings.SECRET_KEY = "another"
    assert numbers_of("stop", word) is None

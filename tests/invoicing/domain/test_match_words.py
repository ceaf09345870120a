import pytest

from invoicing.domain.match_words import (
    digit_keys,
    digit_runs,
    has_number,
    has_tail,
    name_words,
    references_in,
)

NUMBER = "INV-2026-0042"


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("Hof Quellenried GbR", {"quellenried"}),
        ("ÆRØGÅRDEN ApS", {"aerogarden"}),
        ("Müller-Brändli & Söhne", {"muller", "brandli", "sohne"}),
        ("The Farm Ltd", {"the", "farm", "ltd"}),
        ("", set()),
    ],
)
def test_names_without_what_many_have(name, words):
    assert name_words(name) == words


@pytest.mark.parametrize("text", ["INV-2026-0042", "paid inv 2026/0042.", "INV20260042", "x (inv_2026_0042)"])
def test_a_number_whatever_parts_it(text):
    assert has_number(text, NUMBER)


@pytest.mark.parametrize("text", ["INV-2026-00421", "XINV-2026-0042", "2026-0042", "INV-2026-004", ""])
def test_what_is_another_number(text):
    assert not has_number(text, NUMBER)


def test_the_digits_alone():
    assert has_tail("no 2026/0042", NUMBER)
    assert has_tail("0042 und 0044", NUMBER)
    assert not has_tail("10042", NUMBER)
    assert not has_tail("12", "INV-12")
    assert not has_tail("no digits", "INV")


def test_where_numbers_are_looked_for():
    assert digit_keys(NUMBER) == {"0042", "20260042"}
    assert digit_keys("INV") == set()
    assert digit_runs("a 12 b3") == {"12", "3"}


def test_references_are_found_in_groups_and_the_longest_wins():
    known = {"RF73INV20260042", "RF73INV2026"}
    assert list(references_in("ref RF73 INV2 0260 042 thanks", known)) == ["RF73INV20260042"]
    assert list(references_in("RF73INV2026 x RF00", known)) == ["RF73INV2026"]

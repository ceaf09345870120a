"""Every requirement of OWASP ASVS 5.0 that we hold ourselves to has an answer, and what it points at is there.

Source of ids and levels: fixtures/asvs/SOURCE.md.
"""

import pytest

from tests.standards.asvs.answers import PAGE, STATES, answers, is_there, levels, needed
from tests.standards.asvs.write_table import table, written


def test_the_list_is_that_of_the_standard():
    """345 requirements, 70 of level 1 (counted in the published file)."""
    assert len(levels()) == 345
    assert sum(level == "1" for level in levels().values()) == 70


def test_every_requirement_that_we_hold_ourselves_to_is_answered_once_and_in_order():
    assert [row.number for row in answers()] == needed()


def test_every_answer_says_what_it_rests_on_or_what_is_missing():
    for row in answers():
        assert row.state in STATES, row
        assert row.about, row
        assert row.evidence or row.state in ("not", "none"), row
        assert bool(row.gap) is (row.state != "met"), row


def test_what_is_pointed_at_is_there():
    gone = [(row.number, each) for row in answers() for each in row.evidence if not is_there(each)]
    assert not gone


def test_what_is_met_is_shown_by_a_test_a_file_or_a_page_of_ours():
    assert not [
        row.number for row in answers() if row.state == "met" and not any(map(is_there, row.evidence))
    ]


def test_developers_md_shows_the_answers():
    assert written(PAGE.read_text()) == table(), "python -m tests.standards.asvs.write_table"


@pytest.mark.parametrize(
    ("evidence", "expected"),
    [
        ("tests/standards/asvs/test_answers.py::test_what_is_pointed_at_is_there", True),
        ("tests/standards/asvs/test_answers.py::test_that_nobody_wrote", False),
        ("tests/standards/asvs/nowhere.py", False),
        ("DEVELOPERS.md#The wall", True),
        ("DEVELOPERS.md#The gate", False),
    ],
)
def test_what_is_not_there_is_found_out(evidence, expected):
    assert is_there(evidence) is expected

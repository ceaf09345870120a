import pytest

from visits.domain.mobility import MobilityScale
from visits.domain.score_lines import HerdNumbers, lines_of_table, read_score_lines

HERD = HerdNumbers(
    {"412": [1], "7": [2], "a12": [3], "217": [4, 5], "twin 9": [7]},
    {"uk123450600001": [4], "77": [2], "7": [6]},
)


def read(text, scale=MobilityScale.UK):
    return read_score_lines(text, scale, HERD)


@pytest.mark.parametrize("text", ["412 2", "412;2", "412,2", "412\t2", " 412 :  2 ", "412, 2"])
def test_a_cow_and_her_score_stand_on_a_line(text):
    (line,) = read(text)
    assert (line.cow_id, line.score, line.fault) == (1, 2, "")


def test_a_number_comes_before_a_tag_and_letters_may_be_small():
    assert [line.cow_id for line in read("7 0\nA12 1\nuk123450600001 3\ntwin 9 2")] == [2, 3, 4, 7]


def test_empty_lines_are_passed_over_and_lines_count_as_they_stand():
    assert [line.at for line in read("412 2\n\n  \n7 1")] == [1, 4]


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        ("412", "a cow's number and her score are needed, such as 412 2"),
        ("412 lame", "“lame” is no score: whole numbers only"),
        ("412 ²", "“²” is no score: whole numbers only"),
        ("412 4", "UK 0 to 3 runs from 0 to 3, not 4"),
        ("999 2", "no cow here goes by 999"),
        ("217 2", "2 cows here go by 217: give her whole tag"),
    ],
)
def test_what_cannot_be_kept_is_said_in_words(text, fault):
    (line,) = read(text)
    assert (line.text, line.cow_id, line.fault) == (text, None, fault)


def test_each_sheet_has_its_own_scores():
    assert [line.fault for line in read("412 5\n7 0", MobilityScale.SPRECHER)] == [
        "",
        "Sprecher 1 to 5 runs from 1 to 5, not 0",
    ]


def test_a_cow_given_twice_must_have_one_score():
    same = read("412 2\n412 2")
    assert [line.fault for line in same] == ["", ""]
    two = read("412 2\n7 1\n412 3")
    assert [bool(line.fault) for line in two] == [True, False, True]
    assert two[0].fault == "this cow is given 2 and 3: say which"


def test_a_table_is_read_by_its_headings_or_else_its_first_two_columns():
    rows = [["Pen", "Score", "Cow"], ["A", "2", "412"], ["", "", ""], ["B", "1", "7"]]
    assert lines_of_table(rows) == "412 2\n7 1"
    assert lines_of_table([["x", "y"], ["412", "2"], ["7"]]) == "412 2\n7 "
    assert lines_of_table([]) == ""

import pytest

from visits.documents.visit_report_content import Comparison, CowLine, FindingCount, FootLine
from visits.documents.visit_report_count_words import (
    LEAST_FOR_SHARE,
    NOT_ALIKE,
    PICKED,
    basis,
    count_words,
    cows_of,
)
from visits.documents.visit_report_difference import PICKED_AGAIN
from visits.domain.feet import Foot


def test_a_herd_of_unknown_size_is_not_called_a_herd_of_nought(make_report):
    assert basis(make_report(30, herd_size=0)).startswith("30 cows seen, herd size not noted;")


@pytest.mark.parametrize(
    ("whole", "before", "is_warned"),
    [(True, False, True), (False, True, True), (True, True, False), (False, None, False)],
)
def test_picked_cows_beside_a_whole_herd_are_warned_of(make_report, whole, before, is_warned):
    report = make_report(30, whole_herd=whole, compared=(Comparison("last time", 9, before),))
    assert (NOT_ALIKE in basis(report)) is is_warned
    assert (PICKED in basis(report)) is not whole


def test_the_head_of_a_comparison_says_of_how_many_and_which_cows(make_report):
    compared = (Comparison("last time", 28, False), Comparison("a year ago", 120, True))
    heads = count_words(make_report(30, compared=compared)).heads
    assert [head.seen for head in heads] == ["30 cows", "28 cows, picked", "120 cows, whole herd"]


def test_a_lesion_that_was_only_seen_before_is_told_with_a_nought(make_report):
    findings = (FindingCount("toe ulcer", 0, (1, 0)), FindingCount("sole ulcer", 2, (4, 3)))
    rows = count_words(make_report(30, findings=findings)).rows
    assert [(row.lesion, row.cows, row.before) for row in rows] == [
        ("Sole ulcer", "7 in 100 (2 of 30)", ("14 in 100 (4 of 28)", "9 in 100 (3 of 33)")),
        ("Toe ulcer", "0 in 100 (0 of 30)", ("4 in 100 (1 of 28)", "0 in 100 (0 of 33)")),
    ]


@pytest.mark.parametrize(
    ("number", "seen", "told"),
    [
        (3, 30, "10 in 100 (3 of 30)"),
        (1, 330, "under 1 in 100 (1 of 330)"),
        (0, 330, "0 in 100 (0 of 330)"),
        (3, LEAST_FOR_SHARE - 1, "3 of 19"),
        (4, LEAST_FOR_SHARE, "20 in 100 (4 of 20)"),
    ],
)
def test_counts_are_told_in_100_so_that_nobody_need_divide_but_not_of_few_cows(number, seen, told):
    assert cows_of(number, seen) == told


def test_a_cow_whose_foot_is_the_vet_s_is_not_one_with_nothing_found(make_report):
    cows = (CowLine("1", "looked at"), CowLine("2", "looked at", (FootLine(Foot.LEFT_HIND, vet=("hot",)),)))
    assert "nothing found on 1 of them" in basis(make_report(2, cows=cows))


def test_what_the_differences_are_worth_stands_below_the_counts(make_report):
    assert count_words(make_report(30)).difference == PICKED_AGAIN


def test_the_round_that_a_visit_belongs_to_is_told(make_report):
    note = "With the other visits since 1 Dec 2026: 120 of 142 cows seen."
    assert note in basis(make_report(30, whole_herd=True, round_note=note))

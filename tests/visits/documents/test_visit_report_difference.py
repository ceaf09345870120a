"""What may be read from counts of two visits. The intervals themselves are held in tests/visits/domain/herd."""

from random import Random

import pytest

from visits.documents.visit_report_content import Comparison, CowLine, FindingCount
from visits.documents.visit_report_difference import (
    BY_CHANCE,
    OTHERS_BY_CHANCE,
    PART_ONLY,
    PICKED_AGAIN,
    difference_words,
)

WHOLE = (Comparison("last time, 3 Mar", 100, True), Comparison("a year ago, 1 Dec 2025", 100, True))
COWS = tuple(CowLine(str(number), "functional trim") for number in range(100))


@pytest.fixture
def whole_herd(make_report):
    """A visit that saw a whole herd of a hundred, with these findings."""

    def make(*findings, **changes):
        told = {"cows": COWS, "whole_herd": True, "compared": WHOLE, "findings": findings, **changes}
        return make_report(1, **told)

    return make


def test_a_difference_beyond_chance_is_named_with_its_way_and_the_visit(whole_herd):
    ulcers, cracks = FindingCount("sole ulcer", 5, (30, 8)), FindingCount("white line crack", 30, (28, 2))
    assert difference_words(whole_herd(ulcers, cracks)) == (
        "Beyond chance: sole ulcer, fewer than last time, 3 Mar; "
        f"white line crack, more than a year ago, 1 Dec 2025. {OTHERS_BY_CHANCE}"
    )


def test_a_few_cows_more_or_less_are_no_change(whole_herd):
    assert difference_words(whole_herd(FindingCount("sole ulcer", 5, (9, 8)))) == BY_CHANCE


def test_the_more_is_compared_the_larger_a_difference_must_be(whole_herd):
    ulcers = FindingCount("sole ulcer", 4, (14, 5))
    others = [FindingCount(f"lesion {number}", 5, (5, 5)) for number in range(10)]
    assert difference_words(whole_herd(ulcers)).startswith("Beyond chance")
    assert difference_words(whole_herd(ulcers, *others)) == BY_CHANCE


def test_of_herds_in_which_nothing_changed_one_in_twenty_at_most_is_told_of_a_change(whole_herd):
    draw, told = Random(5), 0
    for _ in range(200):
        findings = []
        for lesion, share in (("a", 0.05), ("b", 0.2), ("c", 0.4)):
            now, last, before = (sum(draw.random() < share for _ in range(100)) for _ in range(3))
            findings.append(FindingCount(lesion, now, (last, before)))
        told += difference_words(whole_herd(*findings)) != BY_CHANCE
    assert told <= 200 / 20


def test_picked_cows_and_a_part_of_a_round_tell_of_no_change(whole_herd, make_report):
    ulcers = FindingCount("sole ulcer", 5, (60, 60))
    assert difference_words(whole_herd(ulcers, round_note="With the other visits: 120 of 142.")) == PART_ONLY
    picked = tuple(Comparison(c.label, c.cows_seen, False) for c in WHOLE)
    assert difference_words(whole_herd(ulcers, whole_herd=False, compared=picked)) == PICKED_AGAIN


def test_where_nothing_of_a_kind_is_compared_nothing_is_said(whole_herd):
    ulcers = FindingCount("sole ulcer", 5, (60, None))
    assert difference_words(whole_herd(ulcers, compared=())) == ""
    assert difference_words(whole_herd(ulcers, whole_herd=False)) == "", (
        "the basis says that they are not alike"
    )
    assert difference_words(whole_herd(ulcers, cows=())) == ""
    assert difference_words(whole_herd()) == ""


def test_counts_that_cannot_be_are_left_out_instead_of_failing(whole_herd):
    impossible = FindingCount("sole ulcer", 101, (3, 200))
    assert difference_words(whole_herd(impossible)) == ""

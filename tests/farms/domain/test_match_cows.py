import pytest

from farms.domain.cow_status import CowStatus
from farms.domain.herd_list import HerdRow
from farms.domain.known_cow import KnownCow
from farms.domain.match_cows import match_cows

T1, T2, T9 = "UK123450600001", "UK123450700002", "UK123450100003"
E1, E2 = "826123450600001", "826123450700002"


def _ids(rows, known):
    return [match.cow.id if match.cow else None for match in match_cows(rows, known)]


def _faults(rows, known):
    return [match.fault for match in match_cows(rows, known)]


@pytest.mark.parametrize(
    ("row", "known", "found"),
    [
        (HerdRow(2, "99", T1), [KnownCow(1, "5", T1), KnownCow(2, "99")], 1),
        (HerdRow(2, "99", "", E1), [KnownCow(1, "5", T1, E1)], 1),
        (HerdRow(2, "5"), [KnownCow(1, "5", T1)], 1),
        (HerdRow(2, "a5"), [KnownCow(1, "A5")], 1),
        (HerdRow(2, "5", T9), [KnownCow(1, "5")], 1),
        (HerdRow(2, "5", "", E2), [KnownCow(1, "5", T1)], 1),
        (HerdRow(2, "6"), [KnownCow(1, "5", T1)], None),
        (HerdRow(2, "5"), [KnownCow(1, "5", T1, status=CowStatus.SOLD)], None),
        (HerdRow(2, "5", T9), [KnownCow(1, "5", T1, status=CowStatus.DEAD)], None),
        (HerdRow(2, "5", status=CowStatus.SOLD), [KnownCow(1, "5", status=CowStatus.SOLD)], 1),
    ],
)
def test_a_row_is_matched_by_tag_then_electronic_id_then_number_of_a_cow_on_the_farm(row, known, found):
    assert _ids([row], known) == [found]
    assert _faults([row], known) == [""]


@pytest.mark.parametrize(
    ("row", "known", "words"),
    [
        (HerdRow(2, "5"), [KnownCow(1, "5"), KnownCow(2, "5")], "worn by 2 cows here; add the official tag"),
        (HerdRow(2, "5", T9), [KnownCow(1, "5"), KnownCow(2, "5")], "worn by 2 cows"),
        (HerdRow(2, "5", T9), [KnownCow(1, "5", T1)], f"is on file with {T1}"),
        (HerdRow(2, "5", T9, E1), [KnownCow(1, "5", T1, E1)], f"is on file with {T1}"),
        (
            HerdRow(2, "5", T1, E2),
            [KnownCow(1, "5", T1), KnownCow(2, "6", T2, E2)],
            "another cow than the tag",
        ),
    ],
)
def test_a_row_that_could_mean_two_cows_is_refused_with_what_to_mend(row, known, words):
    assert words in _faults([row], known)[0]


def test_two_rows_that_mean_one_cow_are_not_both_used():
    rows = [HerdRow(2, "5", T1), HerdRow(3, "6", "", E1)]
    assert _faults(rows, [KnownCow(1, "5", T1, E1)]) == [
        "",
        "number: is the same cow as line 2; keep one row",
    ]


def test_two_cows_of_the_list_may_wear_one_number_when_their_tags_differ():
    rows = [HerdRow(2, "5", T1), HerdRow(3, "5", T2)]
    assert _ids(rows, [KnownCow(1, "5", T1)]) == [1, None]
    assert _faults(rows, [KnownCow(1, "5", T1)]) == ["", ""]


def test_the_order_of_the_rows_does_not_matter():
    known = [KnownCow(1, "5", T1), KnownCow(2, "6")]
    rows = [HerdRow(2, "6", T2), HerdRow(3, "7", T1), HerdRow(4, "5")]
    there = {row.line: match for row, match in zip(rows, match_cows(rows, known), strict=True)}
    back = {row.line: match for row, match in zip(rows[::-1], match_cows(rows[::-1], known), strict=True)}
    assert there == back


def test_a_row_with_a_fault_of_its_own_claims_no_cow():
    rows = [HerdRow(2, "5", T1, faults=("status: ?",)), HerdRow(3, "5", T1)]
    assert _ids(rows, [KnownCow(1, "5", T1)]) == [None, 1]

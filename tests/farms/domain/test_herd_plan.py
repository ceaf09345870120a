from dataclasses import replace
from itertools import count

from hypothesis import given, settings
from hypothesis import strategies as st

from farms.domain.cow_status import CowStatus
from farms.domain.herd_list import HerdRow, read_herd_list
from farms.domain.herd_plan import FIELDS, KnownCow, plan_herd_import
from tests.random_examples import examples

T1, T2 = "UK123450600001", "UK123450700002"


def test_rows_are_sorted_into_new_changed_unchanged_and_refused():
    rows = [
        HerdRow(2, "1", T1, status=CowStatus.DRY),
        HerdRow(3, "2"),
        HerdRow(4, "3"),
        HerdRow(5, "4", faults=("status: ?",)),
    ]
    known = [KnownCow(10, "1", T1, status=CowStatus.MILKING), KnownCow(11, "2")]
    plan = plan_herd_import(rows, known)
    assert [row.number for row in plan.new] == ["3"]
    assert [(cow.cow_id, cow.changes[0].after) for cow in plan.changed] == [(10, "dry")]
    assert plan.unchanged == 1
    assert [(row.row.line, row.faults) for row in plan.refused] == [(5, ("status: ?",))]


def test_every_row_lands_in_exactly_one_place():
    rows = [HerdRow(line, str(line % 4), T1 if line == 3 else "") for line in range(2, 12)]
    plan = plan_herd_import(rows, [KnownCow(1, "1"), KnownCow(2, "1")])
    assert len(plan.new) + len(plan.changed) + plan.unchanged + len(plan.refused) == len(rows)


def test_a_cow_that_was_sold_does_not_come_back_because_her_number_is_used_again():
    plan = plan_herd_import([HerdRow(2, "5", T2)], [KnownCow(1, "5", T1, status=CowStatus.SOLD)])
    assert [row.official_tag for row in plan.new] == [T2]


def _applied(plan, known, ids):
    cows = {cow.id: cow for cow in known}
    for change in plan.changed:
        cows[change.cow_id] = _with(cows[change.cow_id], change.row)
    for row in plan.new:
        cow = KnownCow(next(ids), row.number)
        cows[cow.id] = _with(cow, row)
    return list(cows.values())


def _with(cow, row):
    said = {name: getattr(row, name) for name in FIELDS if getattr(row, name) not in (None, "")}
    return replace(cow, number=row.number, **said)


numbers = st.sampled_from(["1", "2", "3"])
tags = st.sampled_from(["", "", "A", "B", "C", "D"])
statuses = st.sampled_from([None, *CowStatus])


@st.composite
def lists_and_herds(draw):
    """Small farms with many clashes; a transponder goes with its tag, as on a real list."""
    eids = st.booleans()

    def cow(line):
        number, tag, has_eid = draw(numbers), draw(tags), draw(eids)
        return HerdRow(line, number, tag, f"e{tag}" if tag and has_eid else "", draw(statuses))

    table = [cow(line) for line in range(2, 2 + draw(st.integers(0, 7)))]
    rows = [row for row in read_again(table) if row]
    seen, known = set(), []
    for number in range(draw(st.integers(0, 4))):
        row = cow(0)
        if row.official_tag in seen:
            continue
        seen |= {row.official_tag} - {""}
        known.append(KnownCow(number, row.number, row.official_tag, row.electronic_id, row.status))
    return rows, known


def read_again(rows):
    """Through the reader, so that what stands twice is a fault, as it is in use."""
    table = [["number", "tag", "status"]]
    table += [[row.number, row.official_tag, row.status.value if row.status else ""] for row in rows]
    read = read_herd_list(table).rows
    return [replace(row, electronic_id=old.electronic_id) for row, old in zip(read, rows, strict=True)]


@settings(max_examples=examples(600), deadline=None)
@given(lists_and_herds())
def test_running_the_same_list_again_changes_nothing_more(case):
    rows, known = case
    first = plan_herd_import(rows, known)
    second = plan_herd_import(rows, _applied(first, known, count(100)))
    assert (second.new, second.changed) == ((), ())
    assert second.refused == first.refused
    assert second.unchanged == len(rows) - len(first.refused)

from visits.domain.planning.problem_form import JobForm, WindowForm
from visits.domain.planning.problem_parts import read_list, read_part

GOOD = {"start": "2026-03-02T07:00:00Z", "end": "2026-03-02T08:00:00+00:00"}


def test_a_fault_in_one_item_hides_no_fault_in_another():
    faults = []
    read = read_list({"w": [GOOD, {"start": 1}, GOOD | {"x": 1}]}, "w", WindowForm, faults)
    assert [part is None for part in read] == [False, True, True]
    assert faults == [
        "w[1].start: is not text",
        "w[1].end: is missing",
        "w[2].x: is not a key that belongs here",
    ]


def test_null_stands_for_a_key_that_is_not_given_where_it_may_be_absent():
    faults = []
    asked = {"id": "j", "site": "s", "minutes": 5, "windows": [], "cows": None, "late_cost_per_day": None}
    assert read_part(asked, "j", JobForm, faults).cows == 0
    assert read_part(asked | {"minutes": None, "note": None}, "j", JobForm, faults) is None
    assert faults == ["j.minutes: is not a number", "j.note: is not a key that belongs here"]


def test_a_good_part_adds_no_fault():
    faults = []
    assert read_part(GOOD, "w", WindowForm, faults).end == GOOD["end"]
    assert faults == []

"""How the figures of a run over the whole API are told."""

from collections import Counter

from tests.bench.api.api_run import told_of
from tests.bench.api.bench_api import table_of
from tests.standards.api.asked_all import Told


def told(**statuses):
    return Told(Counter({int(code[1:]): count for code, count in statuses.items()}))


def test_calls_are_counted_by_status_and_operations_by_whether_they_ever_succeeded():
    found = told_of({"list_farms": told(_200=3, _400=1), "add_farm": told(_409=2)}, seconds=3)
    assert found["statuses"] == {"200": 3, "400": 1, "409": 2}
    assert (found["calls"], found["least_calls"], found["calls_a_second"]) == (6, 2, 2.0)
    assert (found["succeeded"], found["never_succeeded"]) == (0.5, ["add_farm"])
    assert found["faults"] == {}


def test_a_fault_is_told_with_its_operation_and_its_first_case():
    faulty = told(_500=1)
    faulty.faults["Server error 500"] = "  as owner: GET /"
    words = table_of(told_of({"list_farms": faulty}, seconds=1) | {"examples": 50, "cores": 2})
    assert "1 operations, 1 calls (each at least 1 of 50)" in words
    assert "list_farms: Server error 500\n  as owner: GET /" in words
    assert "0.0 % of the operations succeeded at least once; never: list_farms" in words

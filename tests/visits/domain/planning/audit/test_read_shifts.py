from tests.visits.domain.planning.audit.spoil import week
from visits.domain.planning.audit.part import Faults, Part
from visits.domain.planning.audit.read_shifts import read_shift


def test_a_shift_is_read_in_microseconds_and_exact_money():
    problem, _ = week("plain")
    faults = Faults()
    keys = " ".join(problem["shifts"][0])
    shift = read_shift(
        Part(problem["shifts"][0], "shifts[0]", keys, faults), [Part({"id": "yard"}, "", "id", faults)]
    )
    assert faults == Faults()
    assert (shift.max_work, shift.max_cows, shift.cost_per_km) == (36_000_000_000, 60, 50)
    assert shift.meal.latest - shift.meal.earliest == 150 * 60_000_000

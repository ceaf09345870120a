from tests.visits.domain.planning.audit.spoil import spoilt, week
from visits.domain.planning.audit.read_plan import read_plan


def test_a_plan_is_read_with_its_paths():
    plan, faults = read_plan(week("plain")[1])
    assert (faults.broken, faults.surplus) == ([], [])
    assert plan.shifts[0].stops[3].path == "shifts[0].stops[3]"
    assert plan.bound is None


def test_an_unknown_key_does_not_stop_the_audit_but_a_wrong_type_does():
    _, faults = read_plan(spoilt(week("plain")[1], ("hue", 1), ("seed", "1")))
    assert (len(faults.surplus), len(faults.broken)) == (1, 1)

import pytest

from tests.visits.domain.planning.audit.spoil import GONE, spoilt, week
from visits.domain.planning.audit.documents import Unreadable
from visits.domain.planning.audit.read_week import read_week


def test_what_is_absent_takes_the_value_of_the_contract():
    problem, _ = week("plain")
    read = read_week(problem)
    assert read.hygiene["f1"] == 0
    assert read.shifts["tue-ann"].meal is None
    assert read.jobs["j1"].takes("anybody")
    assert read.jobs["j5"].cows == 0


def test_every_fault_is_told_at_once():
    problem, _ = week("plain")
    with pytest.raises(Unreadable) as refusal:
        read_week(spoilt(problem, ("jobs.0.minutes", GONE), ("shifts.0.crew", 1), ("x", 1)))
    assert len(refusal.value.faults) == 3

from visits.domain.planning.problem_faults import ProblemFaults


def test_every_fault_is_a_line():
    assert str(ProblemFaults(["a: is bad", "b: is worse"])) == "a: is bad\nb: is worse"

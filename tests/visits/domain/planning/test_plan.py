from visits.domain.planning.plan import PlanCost


def test_a_total_is_the_sum_of_its_parts():
    assert PlanCost(1.5, 2, 3).total == 6.5

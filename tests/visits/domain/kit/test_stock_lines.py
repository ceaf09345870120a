"""Costs add up, and what is not known stays so."""

from decimal import Decimal

from visits.domain.kit.stock_lines import Cost


def test_costs_add_up_and_one_that_is_not_known_makes_the_sum_so():
    known, unknown = Cost(Decimal(3), Decimal("1.20")), Cost(Decimal(2), Decimal("0.50"), is_known=False)
    assert known + known == Cost(Decimal(6), Decimal("2.40"))
    assert known + unknown == Cost(Decimal(5), Decimal("1.70"), is_known=False)
    assert sum([known], Cost()) == known

from decimal import Decimal

from visits.domain.kit.forecast.amounts import Amounts

ONE, TWO = Decimal(1), Decimal(2)


def test_the_same_amount_told_twice_weighs_twice():
    amounts = Amounts([(ONE, 0.5), (TWO, 1.0), (Decimal("1.00"), 0.25)])
    assert dict(amounts) == {ONE: 0.75, TWO: 1.0}
    assert amounts.weight == 1.75


def test_both_together_leave_either_as_it_was():
    one, other = Amounts([(ONE, 1.0)]), Amounts([(ONE, 4.0), (TWO, 2.0)])
    assert dict(one.and_also(other, 0.5)) == {ONE: 3.0, TWO: 1.0}
    assert dict(one) == {ONE: 1.0}

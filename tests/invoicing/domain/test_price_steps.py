from decimal import Decimal as D

import pytest

from invoicing.domain.price_steps import PriceStep, StepRule, step_parts

STEPS = (PriceStep(1, D(14)), PriceStep(21, D(12)), PriceStep(41, D("10.50")))


@pytest.mark.parametrize(
    ("quantity", "whole", "slices"),
    [
        ("1", [("1", "14")], [("1", "14")]),
        ("20", [("20", "14")], [("20", "14")]),
        ("21", [("21", "12")], [("20", "14"), ("1", "12")]),
        # 45 cows: 45 x 10.50 = 472.50, or 20 x 14 + 20 x 12 + 5 x 10.50 = 572.50
        ("45", [("45", "10.50")], [("20", "14"), ("20", "12"), ("5", "10.50")]),
        ("20.4", [("20.4", "12")], [("20", "14"), ("0.4", "12")]),
        ("0.4", [("0.4", "14")], [("0.4", "14")]),
    ],
)
def test_steps_by_hand(quantity, whole, slices):
    for rule, expected in ((StepRule.WHOLE, whole), (StepRule.SLICES, slices)):
        found = [(part.quantity, part.unit_price) for part in step_parts(D(quantity), STEPS, rule)]
        assert found == [(D(number), D(price)) for number, price in expected]


def test_the_order_in_which_steps_are_kept_does_not_matter():
    assert step_parts(D(45), STEPS[::-1], StepRule.SLICES) == step_parts(D(45), STEPS, StepRule.SLICES)


def test_each_part_says_which_step_it_is():
    assert [part.words for part in step_parts(D(45), STEPS, StepRule.SLICES)] == [
        "1 to 20",
        "21 to 40",
        "41 to 45",
    ]
    assert step_parts(D(45), STEPS, StepRule.WHOLE)[0].words == "price from 41 on"
    assert step_parts(D(3), STEPS, StepRule.WHOLE)[0].words == "first price"
    assert step_parts(D(45), STEPS[:1], StepRule.SLICES)[0].words == ""


def test_the_first_step_holds_from_the_first_one_on():
    late = (PriceStep(5, D(9)), PriceStep(10, D(8)))
    assert step_parts(D(12), late, StepRule.SLICES)[0].quantity == 9


def test_no_steps_are_no_price():
    with pytest.raises(ValueError, match="at least one"):
        step_parts(D(1), (), StepRule.WHOLE)


def test_every_rule_has_words():
    assert len({rule.label for rule in StepRule}) == len(StepRule)

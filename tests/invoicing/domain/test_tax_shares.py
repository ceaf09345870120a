from decimal import Decimal as D

import pytest

from invoicing.domain.tax_shares import RoundingRule, rounded, tax_is_near, tax_of, tax_shares

HALVES = [("S", D(20), D("0.03")), ("S", D(5), D("0.10")), ("S", D(10), D("0.06"))]  # 0.006, 0.005, 0.006


def _taxes(parts, rule, digits=2):
    return {int(share.percent): share.tax for share in tax_shares(parts, digits, rule)}


@pytest.mark.parametrize(
    ("rule", "taxes"),
    [
        (RoundingRule.PER_RATE, {20: "0.01", 5: "0.01", 10: "0.01"}),
        (RoundingRule.TOTAL, {20: "0.01", 5: "0.00", 10: "0.01"}),
        (RoundingRule.TOTAL_DOWN, {20: "0.00", 5: "0.00", 10: "0.01"}),
    ],
)
def test_a_total_is_shared_out_by_largest_remainder(rule, taxes):
    """Exact 0.017: 0.02 half up, 0.01 downwards; the smallest remainder (5 %) goes without first."""
    assert _taxes(HALVES, rule) == {rate: D(tax) for rate, tax in taxes.items()}


@pytest.mark.parametrize("rule", list(RoundingRule))
def test_turning_the_signs_turns_the_tax_of_each_rate(rule):
    turned = [(category, percent, -net) for category, percent, net in HALVES]
    assert _taxes(turned, rule) == {rate: -tax for rate, tax in _taxes(HALVES, rule).items()}


@pytest.mark.parametrize("rule", [RoundingRule.TOTAL, RoundingRule.TOTAL_DOWN])
def test_rates_of_either_sign_share_one_total(rule):
    """0.006 - 0.005 is 0.001: nought in total, and no rate is a penny away."""
    taxes = _taxes([("S", D(20), D("0.03")), ("S", D(5), D("-0.10"))], rule)
    assert taxes == {20: D(0), 5: D(0)}


def test_line_by_line_a_discount_on_the_whole_is_rounded_for_itself():
    parts = [("S", D(20), D("13.33"))] * 3 + [("S", D(20), D("-13.33"))]
    assert _taxes(parts, RoundingRule.PER_LINE) == {20: D("5.34")}
    assert _taxes(parts, RoundingRule.PER_RATE) == {20: D("5.33")}


def test_lines_of_nought_give_a_tax_of_nought():
    for rule in RoundingRule:
        assert _taxes([("S", D(20), D("0.00")), ("Z", D(0), D("0.00"))], rule) == {20: D(0), 0: D(0)}


def test_nought_has_no_sign():
    assert str(rounded(D("-0.004"), 2)) == "0.00"
    assert str(tax_of(D("-0.01"), D(20))) == "0.00"


@pytest.mark.parametrize(
    ("tax", "near"), [("20.00", True), ("20.99", True), ("21.00", False), ("19.01", True)]
)
def test_the_official_rules_take_what_is_less_than_one_away(tax, near):
    assert tax_is_near(D(100), D(20), D(tax)) is near
    assert tax_is_near(D(-100), D(20), -D(tax)) is near


def test_each_rule_has_its_words():
    assert len({rule.label for rule in RoundingRule}) == len(RoundingRule)

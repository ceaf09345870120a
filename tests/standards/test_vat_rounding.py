"""Tax rounding against official figures. Each case names its source."""

from decimal import Decimal as D

import pytest

from invoicing.domain.amounts import AmountLine, RoundingRule, invoice_amounts, line_net, tax_of
from trimops.kernel.money import round_money


@pytest.mark.parametrize(
    ("taxable", "percent", "tax"),
    [
        ("6491.34", "25", "1622.84"),
        ("-6491.34", "25", "-1622.84"),
        ("2141.05", "14", "299.75"),
        ("2141.19", "2.1", "44.96"),
        ("-2141.19", "5.5", "-117.77"),
        ("-72.50", "19", "-13.78"),
    ],
)
def test_tax_of_the_cen_unit_tests_comes_out_to_the_cent(taxable, percent, tax):
    """ConnectingEurope/eInvoicing-EN16931: BR-CO-17 unit tests (UBL 1-12; test/cii/BR-CO-17.xml)."""
    assert tax_of(D(taxable), D(percent)) == D(tax)


def test_tax_is_taken_on_the_sum_of_a_rate_not_on_each_line():
    """EN 16931 BR-S-08, BR-CO-17; 3 x 0.99 + 4 x 1.37 at 21 %: 1.77, and 1.79 line by line."""
    lines = [_line("3", "0.99", "21"), _line("4", "1.37", "21")]
    assert invoice_amounts(lines).tax == D("1.77")
    assert sum(round_money(D(price) * D("0.21")) * count for price, count in (("0.99", 3), ("1.37", 4))) == D(
        "1.79"
    )


def test_half_a_cent_goes_up_where_a_banker_would_go_to_the_even():
    """0.50 at 21 %: 0.11 half up (EN 16931), 0.10 half to even."""
    assert tax_of(D("0.50"), D(21)) == D("0.11")


@pytest.mark.parametrize(
    ("rule", "tax"),
    [
        (RoundingRule.TOTAL_DOWN, "7.99"),
        (RoundingRule.TOTAL, "8.00"),
        (RoundingRule.PER_RATE, "8.00"),
        (RoundingRule.PER_LINE, "8.01"),
    ],
)
def test_each_total_that_uk_rules_allow_has_its_rounding_rule(rule, tax):
    """Notice 700 17.5, VATREC12010: the whole total rounded down, half up, or line by line (3 x 13.33 at 20 %)."""
    lines = [_line("1", "13.33", "20")] * 3
    assert invoice_amounts(lines, rule=rule).tax == D(tax)


def test_a_tiny_unit_price_keeps_its_decimals_until_the_line_is_done():
    """EN 16931: BT-146 may carry any decimals, BT-131 at most two."""
    assert line_net(D(1000), D("0.0024")) == D("2.40")


def _line(quantity: str, price: str, percent: str) -> AmountLine:
    return AmountLine(D(quantity), D(price), "S", D(percent))

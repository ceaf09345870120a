"""Tax rounding against official figures. Each case names its source."""

from decimal import Decimal as D

import pytest

from invoicing.domain.amounts import AmountLine, invoice_amounts, line_net, tax_of
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


def test_of_the_three_totals_uk_rules_allow_ours_is_the_half_up_one():
    """VAT Notice 700 17.5 and VATREC12010 allow 7.99 (whole total rounded down), 8.00 or 8.01 (line by line)."""
    lines = [_line("1", "13.33", "20")] * 3
    assert invoice_amounts(lines).tax == D("8.00")
    assert 3 * tax_of(D("13.33"), D(20)) == D("8.01")


def test_a_tiny_unit_price_keeps_its_decimals_until_the_line_is_done():
    """EN 16931: BT-146 may carry any decimals, BT-131 at most two."""
    assert line_net(D(1000), D("0.0024")) == D("2.40")


def test_all_18_official_examples_give_their_own_tax_and_totals(published):
    """Official UBL examples at validation-1.3.16 (fixtures/standards/en16931_ubl_example_totals.json)."""
    examples = published("en16931_ubl_example_totals.json")["examples"]
    assert len(examples) == 18
    for example in examples:
        amounts = invoice_amounts([*_document_lines(example)])
        assert _shares(amounts.tax_shares) == _published_shares(example), example["file"]
        totals = example["totals"]
        assert amounts.net == D(totals["TaxExclusiveAmount"]), example["file"]
        assert amounts.tax == D(totals["TaxAmount"]), example["file"]
        assert amounts.gross == D(totals["TaxInclusiveAmount"]), example["file"]


def test_line_nets_of_the_official_examples_come_out_where_the_source_agrees_with_itself(published):
    checked = 0
    for example in published("en16931_ubl_example_totals.json")["examples"]:
        odd = {number for kind, number, *_ in example["exact_recompute_differs"] if kind == "line"}
        for number, line in enumerate(example["lines"], start=1):
            if number not in odd and not line["adjustments"]:
                unit = D(line["price"]) / D(line["base_qty"] or 1)
                assert line_net(D(line["qty"]), unit) == D(line["net"]), (example["file"], number)
                checked += 1
    assert checked > 80


def _line(quantity: str, price: str, percent: str) -> AmountLine:
    return AmountLine(D(quantity), D(price), "S", D(percent))


def _document_lines(example):
    for line in example["lines"]:
        yield AmountLine(D(1), D(line["net"]), line["vat_cat"], D(line["vat_rate"] or 0))
    for item in example["document_adjustments"]:
        sign = 1 if item["charge"] else -1
        yield AmountLine(D(sign), D(item["amount"]), item["vat_cat"], D(item["vat_rate"] or 0))


def _shares(shares):
    return {(share.category, share.percent): (share.taxable, share.tax) for share in shares}


def _published_shares(example):
    return {
        (share["cat"], D(share["rate"] or 0)): (D(share["taxable"]), D(share["tax"]))
        for share in example["vat_breakdown"]
    }

from decimal import Decimal as D

from hypothesis import given
from hypothesis import strategies as st

from invoicing.domain.amounts import (
    AmountLine,
    TaxShare,
    WholeAmount,
    amount_due,
    invoice_amounts,
    line_net,
    sum_of_line_nets,
    total_tax,
    total_with_tax,
    total_without_tax,
)


def _line(quantity, price, percent="20", category="S"):
    return AmountLine(D(quantity), D(price), category, D(percent))


def test_each_total_follows_from_the_one_before():
    amounts = invoice_amounts([_line(24, "13.50"), _line(3, "12.00"), _line("18.4", "0.45")])
    assert amounts.line_nets == (D("324.00"), D("36.00"), D("8.28"))
    assert amounts.net == D("368.28")
    assert amounts.tax == D("73.66")
    assert amounts.gross == D("441.94")


def test_each_rate_and_category_is_taxed_on_its_own():
    amounts = invoice_amounts([_line(1, 100), _line(1, 50, "5"), _line(1, 30, "0", "Z"), _line(1, 10)])
    assert amounts.tax_shares == (
        TaxShare("S", D(20), D("110.00"), D("22.00")),
        TaxShare("S", D(5), D("50.00"), D("2.50")),
        TaxShare("Z", D(0), D("30.00"), D("0.00")),
    )


def test_rates_written_with_other_zeros_are_one_rate():
    assert len(invoice_amounts([_line(1, 1, "20"), _line(1, 1, "20.00")]).tax_shares) == 1


def test_an_exempt_invoice_has_no_tax_and_says_so():
    amounts = invoice_amounts([_line(2, 40, "0", "E")])
    assert (amounts.tax, amounts.gross) == (D("0.00"), D("80.00"))


def test_an_empty_invoice_is_nought():
    amounts = invoice_amounts([])
    assert (amounts.net, amounts.tax, amounts.gross, amounts.tax_shares) == (0, 0, 0, ())


def test_a_currency_without_cents_is_rounded_to_whole_units():
    amounts = invoice_amounts([_line(1, "1234.5", "10")], digits=0)
    assert (amounts.net, amounts.tax, amounts.gross) == (D(1235), D(124), D(1359))


def test_the_rules_of_the_standard_each_have_their_function():
    assert sum_of_line_nets([D("1.10"), D("2.20")]) == D("3.30")  # BR-CO-10
    assert total_without_tax(D("3.30"), allowances=D("1.00"), charges=D("0.50")) == D("2.80")  # BR-CO-13
    assert total_tax([TaxShare("S", D(20), D(10), D(2)), TaxShare("S", D(5), D(10), D("0.5"))]) == D("2.5")
    assert total_with_tax(D("2.80"), D("0.56")) == D("3.36")  # BR-CO-15
    assert amount_due(D("3.36"), D("3.00")) == D("0.36")  # BR-CO-16


def test_a_line_is_rounded_once():
    assert line_net(D("3"), D("0.335")) == D("1.01")


lines = st.lists(
    st.builds(
        AmountLine,
        quantity=st.decimals(-500, 500, places=2),
        unit_price=st.decimals(0, 1000, places=4),
        tax_category=st.sampled_from(["S"]),
        tax_percent=st.sampled_from([D(0), D(5), D("13.5"), D(20), D(25)]),
    ),
    max_size=12,
)


@given(lines)
def test_totals_always_add_up_to_the_cent(found):
    amounts = invoice_amounts(found)
    assert amounts.net == sum(amounts.line_nets)
    assert amounts.net == sum(share.taxable for share in amounts.tax_shares)
    assert amounts.gross == amounts.net + amounts.tax
    assert amounts.gross == amounts.gross.quantize(D("0.01"))


@given(lines)
def test_a_credit_note_of_the_same_lines_cancels_the_invoice(found):
    credit = [AmountLine(-one.quantity, one.unit_price, one.tax_category, one.tax_percent) for one in found]
    assert invoice_amounts(found).gross + invoice_amounts(credit).gross == 0


@given(lines, st.randoms())
def test_the_order_of_the_lines_does_not_matter(found, rng):
    shuffled = list(found)
    rng.shuffle(shuffled)
    assert invoice_amounts(shuffled).tax_shares == invoice_amounts(found).tax_shares


def test_discounts_and_charges_on_the_whole_change_the_tax_of_their_rate():
    whole = [WholeAmount(False, D("10.00"), "S", D(20)), WholeAmount(True, D("4.00"), "Z", D(0))]
    amounts = invoice_amounts([_line(1, 100)], whole)
    assert (amounts.line_sum, amounts.allowances, amounts.charges) == (
        D(100),
        D(10),
        D(4),
    )  # BR-CO-10, 11, 12
    assert (amounts.net, amounts.tax, amounts.gross) == (D(94), D(18), D(112))  # BR-CO-13, 14, 15
    assert amounts.tax_shares == (TaxShare("S", D(20), D(90), D(18)), TaxShare("Z", D(0), D(4), D(0)))


def test_what_was_paid_and_what_is_rounded_change_only_what_is_due():
    amounts = invoice_amounts([_line(1, 100)], prepaid=D("20.00"), rounding=D("-0.02"))
    assert (amounts.gross, amounts.payable) == (D("120.00"), D("99.98"))


def test_a_figure_finer_than_the_currency_is_rounded_before_it_is_added():
    """Else the sum on paper is not the sum of what is printed."""
    line = AmountLine(D(1), D("10.00"), "S", D(20), allowance=D("0.3349"))
    whole = [WholeAmount(True, D("0.005"), "S", D(20))]
    amounts = invoice_amounts([line], whole, prepaid=D("1.005"), rounding=D("0.001"))
    assert (amounts.line_nets, amounts.charges, amounts.net) == ((D("9.67"),), D("0.01"), D("9.68"))
    assert (amounts.prepaid, amounts.rounding) == (D("1.01"), D(0))


def test_a_line_below_nought_is_rounded_away_from_nought():
    assert line_net(D(-1), D("0.335")) == D("-0.34")

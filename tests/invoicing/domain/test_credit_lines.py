"""Credit notes of one invoice never come to more than the invoice, and all of them to exactly that."""

from decimal import Decimal as D

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from invoicing.domain.amounts import AmountLine, RoundingRule, WholeAmount, invoice_amounts, line_net
from invoicing.domain.credit_lines import (
    Creditable,
    CreditableLine,
    CreditableWhole,
    CreditAsk,
    TooMuchCredit,
    credit_of,
    lines_left,
)
from tests.random_examples import examples

NOTHING = Creditable((), ())


def line(key, quantity, price, allowance="0", percent="20"):
    net = line_net(D(quantity), D(price), 2, D(allowance))
    return CreditableLine(key, D(quantity), D(price), D(allowance), "S", D(percent), net)


def amounts(lines, whole, rule=RoundingRule.PER_RATE, rounding=D(0)):
    return invoice_amounts(
        [AmountLine(x.quantity, x.unit_price, x.tax_category, x.tax_percent, x.allowance) for x in lines],
        [WholeAmount(x.is_charge, x.amount, x.tax_category, x.tax_percent) for x in whole],
        2,
        rule,
        rounding=rounding,
    )


def invoice(lines, whole=(), rule=RoundingRule.PER_RATE):
    return Creditable(tuple(lines), tuple(whole), amounts(lines, whole, rule).gross)


def added(taken, credit, rule=RoundingRule.PER_RATE):
    total = amounts(credit.lines, credit.whole, rule, credit.rounding).payable
    return Creditable(taken.lines + credit.lines, taken.whole + credit.whole, taken.total + total)


def test_everything_at_once_has_the_lines_of_the_invoice():
    bill = invoice([line(1, 24, "13.50"), line(2, 3, "12.00", "1.80", "5")])
    credit = credit_of(bill, NOTHING, None)
    assert credit.lines == bill.lines
    assert credit.rounding == 0
    assert credit.whole_lines == {1, 2}


def test_some_of_a_line_take_their_share_of_its_discount():
    bill = invoice([line(1, 10, "10.00", "5.00")])
    credit = credit_of(bill, NOTHING, [CreditAsk(1, quantity=D(4))])
    (one,) = credit.lines
    assert (one.quantity, one.allowance, one.net) == (D(4), D("2.00"), D("38.00"))
    assert credit.whole_lines == frozenset()
    left = lines_left(bill, added(NOTHING, credit))
    assert (left[1].quantity, left[1].allowance, left[1].net) == (D(6), D("3.00"), D("57.00"))


def test_an_amount_is_no_quantity():
    bill = invoice([line(1, 10, "10.00")])
    credit = credit_of(bill, NOTHING, [CreditAsk(1, amount=D("7.30"))])
    assert (credit.lines[0].quantity, credit.lines[0].unit_price) == (D(1), D("7.30"))
    left = lines_left(bill, added(NOTHING, credit))
    assert (left[1].quantity, left[1].net) == (D(10), D("92.70"))
    rest = credit_of(bill, added(NOTHING, credit), None)
    assert (rest.lines[0].allowance, rest.lines[0].net) == (D("7.30"), D("92.70"))


def test_a_discount_on_the_whole_goes_back_with_its_lines():
    off = CreditableWhole("off", False, D("5.00"), "S", D(20))
    bill = invoice([line(1, 1, "60.00"), line(2, 1, "40.00")], [off])
    first = credit_of(bill, NOTHING, [CreditAsk(2)])
    assert first.whole[0].amount == D("2.00")  # 40 of 100
    rest = credit_of(bill, added(NOTHING, first), None)
    assert rest.whole[0].amount == D("3.00")


@pytest.mark.parametrize(
    "ask", [CreditAsk(1, quantity=D(11)), CreditAsk(1, amount=D("100.01")), CreditAsk(9), CreditAsk(1, D(0))]
)
def test_more_than_is_left_is_refused(ask):
    with pytest.raises(TooMuchCredit):
        credit_of(invoice([line(1, 10, "10.00")]), NOTHING, [ask])


prices = st.decimals("0.01", 200, places=2)
some_lines = st.lists(
    st.tuples(st.integers(1, 30), prices, st.sampled_from(["0", "0.01"]), st.sampled_from(["20", "5", "0"])),
    min_size=1,
    max_size=6,
)
asks = st.lists(st.tuples(st.integers(0, 5), st.integers(1, 30), st.booleans()), max_size=5)


@settings(max_examples=examples(100))
@given(some_lines, st.decimals(0, "0.5", places=2), asks, st.sampled_from(RoundingRule))
def test_all_credit_notes_together_are_the_invoice_to_the_cent(found, part, tries, rule):
    lines = [line(key, *one) for key, one in enumerate(found, start=1)]
    taxable = sum(one.net for one in lines if one.tax_percent == lines[0].tax_percent)
    off = CreditableWhole("off", False, (taxable * part).quantize(D("0.01")), "S", lines[0].tax_percent)
    whole = [off] if off.amount else []
    bill, taken = invoice(lines, whole, rule), NOTHING
    for key, number, is_amount in tries:
        ask = CreditAsk(key, amount=D(number)) if is_amount else CreditAsk(key, quantity=D(number))
        try:
            credit = credit_of(bill, taken, [ask], 2, rule)
        except TooMuchCredit:
            continue
        taken = added(taken, credit, rule)
        assert taken.total <= bill.total
    if lines_left(bill, taken):
        taken = added(taken, credit_of(bill, taken, None, 2, rule), rule)
    assert taken.total == bill.total
    assert sum(one.net for one in taken.lines) == sum(one.net for one in lines)
    assert sum(one.amount for one in taken.whole) == sum(one.amount for one in whole)


@settings(max_examples=examples(60))
@given(some_lines, st.sampled_from(RoundingRule))
def test_a_credit_note_of_everything_is_the_invoice_at_each_rate(found, rule):
    lines = [line(key, *one) for key, one in enumerate(found, start=1)]
    credit = credit_of(invoice(lines, (), rule), NOTHING, None, 2, rule)
    back = amounts(credit.lines, credit.whole, rule, credit.rounding)
    assert back.tax_shares == amounts(lines, (), rule).tax_shares
    assert back.rounding == 0

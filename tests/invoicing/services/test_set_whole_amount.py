"""Discounts and charges on the whole."""

from datetime import date
from decimal import Decimal as D

import pytest

from invoicing.domain.discount import Discount
from invoicing.models import InvoiceLine, TaxRate
from invoicing.services.add_line import HandLine, add_line
from invoicing.services.open_draft import ChangeRefused
from invoicing.services.set_whole_amount import WholeChange, drop_whole_amount, set_whole_amount
from invoicing.services.total_draft import LessThanNothing, total_draft
from tests.invoicing.drafts import plain_draft
from tests.invoicing.services.billing import hand

TEN_PERCENT = WholeChange(False, Discount(percent=D(10)))


def two_rates(house):
    """40 at 20 %, 10 at 5 %."""
    low = TaxRate.objects.create(
        business=house.business, code="low", category="S", percent=5, valid_from=date(2026, 1, 1)
    )
    line = HandLine("Powder", D(1), D(10), low)
    return add_line(invoice=plain_draft(house, "40.00"), line=line, hand=hand(house))


def test_a_percentage_is_split_by_rate_and_follows_the_lines(house):
    after = set_whole_amount(invoice=two_rates(house), change=TEN_PERCENT, hand=hand(house))
    assert (after.line_sum, after.allowances, after.net) == (50, 5, 45)
    assert after.tax == D("7.20") + D("0.45")
    InvoiceLine.objects.within(house.scope).filter(invoice=after, item="call_out").update(unit_price=60)
    again = total_draft(invoice=after)
    assert (again.line_sum, again.allowances) == (70, 7)
    for row in again.document_amounts.within(house.scope):
        again = drop_whole_amount(amount=row, hand=hand(house))
    assert (again.allowances, again.net) == (0, 70)


def test_an_amount_says_its_rate_and_a_charge_is_added(house):
    draft = two_rates(house)
    with pytest.raises(ChangeRefused, match="which one"):
        set_whole_amount(invoice=draft, change=WholeChange(True, Discount(amount=D(3))), hand=hand(house))
    change = WholeChange(True, Discount(amount=D(3)), ("S", D(5)))
    after = set_whole_amount(invoice=draft, change=change, hand=hand(house))
    assert (after.charges, after.net, after.tax) == (3, 53, D("8.65"))


@pytest.mark.parametrize(
    "wrong",
    [
        WholeChange(False, Discount()),
        WholeChange(False, Discount(amount=D(1)), ("S", D(7))),
        WholeChange(False, Discount(amount=D("40.01"))),
        TEN_PERCENT,
    ],
)
def test_what_makes_no_sense_or_is_there_already_is_refused(house, wrong):
    draft = set_whole_amount(invoice=plain_draft(house, "40.00"), change=TEN_PERCENT, hand=hand(house))
    with pytest.raises(ChangeRefused):
        set_whole_amount(invoice=draft, change=wrong, hand=hand(house))


def test_more_off_than_billed_is_refused(house):
    draft = plain_draft(house, "40.00")
    most = WholeChange(False, Discount(amount=D(30)))
    set_whole_amount(invoice=draft, change=most, hand=hand(house, "First"))
    with pytest.raises(LessThanNothing):
        set_whole_amount(invoice=draft, change=most, hand=hand(house, "Second"))

"""A line put in by hand."""

from datetime import date
from decimal import Decimal as D

import pytest

from invoicing.models import TaxRate
from invoicing.services.add_line import HandLine, add_line
from invoicing.services.open_draft import ChangeRefused
from tests.invoicing.drafts import plain_draft
from tests.invoicing.services.billing import hand, line_of


def low(house):
    return TaxRate.objects.create(
        business=house.business, code="low", category="S", percent=5, valid_from=date(2026, 1, 1)
    )


def test_it_carries_the_tax_that_was_chosen_and_stands_last(house):
    line = HandLine("Foot bath powder", D(2), D("7.25"), low(house))
    after = add_line(invoice=plain_draft(house, "40.00"), line=line, hand=hand(house))
    assert (after.net, after.tax) == (D("54.50"), D("8.00") + D("0.73"))
    row = line_of(after, "other")
    assert (row.position, row.is_by_hand, row.why) == (2, True, "put in by hand: Agreed on the telephone")


@pytest.mark.parametrize(("words", "quantity", "price"), [(" ", 1, 1), ("Powder", 0, 1), ("Powder", 1, -1)])
def test_what_makes_no_sense_is_refused(house, words, quantity, price):
    line = HandLine(words, D(quantity), D(price), low(house))
    with pytest.raises(ChangeRefused):
        add_line(invoice=plain_draft(house), line=line, hand=hand(house))

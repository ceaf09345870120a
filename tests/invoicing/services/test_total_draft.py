"""Totals follow the lines, by the rounding rule of the draft."""

from decimal import Decimal as D

from invoicing.models import InvoiceLine
from invoicing.selectors.kept_amounts import amount_line
from invoicing.services.total_draft import total_draft
from tests.invoicing.drafts import plain_draft


def more_lines(draft, prices):
    like = draft.lines.within(draft.scope).get()
    for position, price in enumerate(prices, start=2):
        like.pk, like.position, like.unit_price = None, position, D(price)
        like.save(force_insert=True)


def test_the_rounding_rule_of_the_draft_holds(house):
    # 0.13 at 20 % is 0.026: three times rounded 0.09, once on 0.39 it is 0.078, so 0.08; with 10.00 on top 2.09, 2.08
    draft = plain_draft(house)
    more_lines(draft, ["0.13"] * 3)
    assert total_draft(invoice=draft).tax == D("2.08")
    draft.rounding_rule = "per_line"
    after = total_draft(invoice=draft)
    assert (after.net, after.tax, after.gross) == (D("10.39"), D("2.09"), D("12.48"))


def test_the_net_of_each_line_is_kept(house):
    draft = plain_draft(house)
    InvoiceLine.objects.within(house.scope).filter(invoice=draft).update(quantity=3, allowance=D("1.50"))
    total_draft(invoice=draft)
    line = draft.lines.within(house.scope).get()
    assert (line.net, amount_line(line).allowance) == (D("28.50"), D("1.50"))

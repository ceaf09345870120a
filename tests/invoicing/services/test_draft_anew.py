"""Started over from the work."""

from decimal import Decimal as D

from invoicing.domain.discount import Discount
from invoicing.models import DraftEdit
from invoicing.services.change_line import LineChange, change_line
from invoicing.services.draft_anew import draft_anew
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.set_whole_amount import WholeChange, set_whole_amount
from invoicing.services.strike_line import strike_line
from tests.factories import NOON, make_prices
from tests.invoicing.services.billing import by_month, hand, line_of, lines_of, worked


def test_all_that_was_done_by_hand_is_dropped_but_told(house):
    make_prices(house.business)
    draft = draft_invoice(visit=worked(house), at=NOON)
    strike_line(line=line_of(draft, "block"), hand=hand(house))
    change_line(
        line=line_of(draft, "functional"), change=LineChange("Trim", D(3), Discount()), hand=hand(house)
    )
    set_whole_amount(invoice=draft, change=WholeChange(False, Discount(amount=D(1))), hand=hand(house))
    after = draft_anew(invoice=draft, hand=hand(house, "Begun wrongly"))
    assert (after.pk, after.net, after.allowances) == (draft.pk, 40, 0)
    assert lines_of(after)["functional"] == (1, 10)
    assert DraftEdit.objects.within(house.scope).filter(invoice=draft).count() == 4


def test_the_draft_of_a_month_too(house):
    make_prices(house.business)
    by_month(house.farm)
    draft = draft_invoice(visit=worked(house), at=NOON)
    strike_line(line=line_of(draft, "block"), hand=hand(house))
    assert draft_anew(invoice=draft, hand=hand(house)).net == 40

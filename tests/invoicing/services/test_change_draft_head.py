"""What stands above and below the lines."""

from datetime import timedelta
from decimal import Decimal as D

import pytest

from invoicing.models import DraftEdit
from invoicing.services.change_draft_head import DraftHead, change_draft_head
from invoicing.services.draft_anew import draft_anew
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.open_draft import ChangeRefused, Hand
from tests.factories import make_prices
from tests.invoicing.drafts import plain_draft
from tests.invoicing.services.billing import hand, worked


def test_what_was_paid_before_comes_off_what_is_to_pay(house):
    head = DraftHead("Thank you", "PO 9", "", D("8.00"))
    after = change_draft_head(invoice=plain_draft(house, "40.00"), head=head, hand=hand(house))
    assert (after.gross, after.payable, after.order_number, after.note) == (48, 40, "PO 9", "Thank you")
    told = DraftEdit.objects.within(house.scope).get().what
    assert told == "note “Thank you” put in; order number “PO 9” put in; paid before: “0.00” became “8.00”"
    change_draft_head(invoice=after, head=head, hand=hand(house))
    assert DraftEdit.objects.within(house.scope).count() == 1, "what did not change is not told"


@pytest.mark.parametrize("prepaid", ["48.01", "-1", "1.005"])
def test_more_than_is_billed_or_less_than_nothing_was_not_paid(house, prepaid):
    with pytest.raises(ChangeRefused):
        change_draft_head(
            invoice=plain_draft(house, "40.00"), head=DraftHead("", "", "", D(prepaid)), hand=hand(house)
        )


def test_the_tax_point_is_moved_on_but_not_before_the_work_nor_ahead(house):
    make_prices(house.business)
    visit = worked(house)
    draft = draft_invoice(visit=visit, at=visit.finished_at)
    later = Hand(house.office, visit.finished_at + timedelta(days=40), "The quarter is closed")
    day = draft.tax_point

    def moved(to):
        return change_draft_head(invoice=draft, head=DraftHead("", "", "", tax_point=to), hand=later)

    for wrong in (day - timedelta(days=1), day + timedelta(days=41)):
        with pytest.raises(ChangeRefused):
            moved(wrong)
    assert moved(day + timedelta(days=40)).tax_point == day + timedelta(days=40)
    assert DraftEdit.objects.within(house.scope).get().what == "tax point: “3 Mar 2026” became “12 Apr 2026”"
    assert draft_invoice(visit=visit, at=later.at).tax_point == day + timedelta(days=40), "drafting keeps it"
    assert draft_anew(invoice=draft, hand=later).tax_point == day

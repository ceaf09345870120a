"""One line changed by hand, and that it is told."""

from decimal import Decimal as D

import pytest

from invoicing.domain.discount import Discount
from invoicing.models import DraftEdit
from invoicing.services.change_line import LineChange, change_line
from invoicing.services.open_draft import ChangeRefused
from tests.invoicing.drafts import plain_draft
from tests.invoicing.services.billing import hand, line_of


def test_a_discount_in_percent_is_kept_with_its_reason_and_told(house):
    draft = plain_draft(house, "10.00")
    change = LineChange("Call-out, shared", D(2), Discount(percent=D("12.5")))
    after = change_line(line=line_of(draft, "call_out"), change=change, hand=hand(house))
    row = line_of(draft, "call_out")
    assert (row.allowance, row.net, row.allowance_reason) == (
        D("2.50"),
        D("17.50"),
        "Agreed on the telephone",
    )
    assert row.is_by_hand
    assert (after.net, after.tax, after.gross) == (D("17.50"), D("3.50"), D("21.00"))
    edit = DraftEdit.objects.within(house.scope).get()
    assert edit.what == "“Call-out” 1 x 10.00, no discount became “Call-out, shared” 2 x 10.00, 12.5 % off"
    assert (edit.by, edit.reason) == (house.office, "Agreed on the telephone")


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (LineChange(" ", D(1), Discount()), "what the line is for"),
        (LineChange("Block", D(0), Discount()), "strike the line"),
        (LineChange("Block", D(1), Discount(amount=D(11))), "from 0 to 10"),
    ],
)
def test_what_makes_no_sense_is_refused(house, change, says):
    with pytest.raises(ChangeRefused, match=says):
        change_line(line=line_of(plain_draft(house), "call_out"), change=change, hand=hand(house))

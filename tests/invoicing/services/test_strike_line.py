"""A line struck off: its work is not proposed again."""

import pytest

from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.open_draft import ChangeRefused
from invoicing.services.strike_line import strike_line
from tests.factories import NOON, make_prices
from tests.invoicing.drafts import plain_draft
from tests.invoicing.services.billing import hand, keys_of, line_of, lines_of, worked


def test_a_struck_lines_work_stays_held_and_is_not_drafted_again(house):
    make_prices(house.business)
    draft = draft_invoice(visit=worked(house), at=NOON)
    strike_line(line=line_of(draft, "block"), hand=hand(house, "It fell off in the yard"))
    again = draft_invoice(visit=draft.visit, at=NOON)
    assert "block" not in lines_of(again)
    assert again.net == 30
    assert len(keys_of(again, line=None, not_billed_because="It fell off in the yard")) == 1


def test_the_only_line_is_not_struck(house):
    draft = plain_draft(house)
    with pytest.raises(ChangeRefused, match="only line"):
        strike_line(line=line_of(draft, "call_out"), hand=hand(house))

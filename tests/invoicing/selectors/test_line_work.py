"""Why a line is there, and when it no longer fits."""

from decimal import Decimal as D

from invoicing.domain.discount import Discount
from invoicing.selectors.draft_misfits import lost_claims
from invoicing.selectors.line_work import left_off, line_stories
from invoicing.selectors.visits_billed import bill_of_visit, visits_billed
from invoicing.services.change_line import LineChange, change_line
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.strike_line import strike_line
from tests.factories import NOON, make_prices
from tests.invoicing.services.billing import hand, line_of, worked
from visits.models import Trim


def test_each_line_has_its_work_and_a_line_by_hand_tells_what_it_lost(house):
    make_prices(house.business)
    visit = worked(house)
    draft = draft_invoice(visit=visit, at=NOON)
    assert lost_claims(draft) == frozenset()
    change = LineChange("Block", D(1), Discount(amount=D(1)))
    change_line(line=line_of(draft, "block"), change=change, hand=hand(house))
    strike_line(line=line_of(draft, "functional"), hand=hand(house, "Not ours"))
    Trim.objects.within(house.scope).filter(kind="corrective").update(taken_back_at=NOON)
    stories = {story.line.item: story for story in line_stories(draft, lost_claims(draft))}
    assert (len(stories["block"].work), stories["block"].lost) == (1, 1)
    assert [claim.not_billed_because for claim in left_off(draft)] == ["Not ours"]
    assert visits_billed(draft) == [visit]
    assert bill_of_visit(visit) == draft

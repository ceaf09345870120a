"""Work that changed after the bill: told, then billed or credited on the office's word."""

import pytest

from invoicing.models import BilledWork, LateWork, Price
from invoicing.selectors.bill_difference import bill_difference
from invoicing.services.discard_draft import discard_draft
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.draft_late_work import BillFits, draft_late_work
from invoicing.services.issue_invoice import issue_invoice
from tests.factories import NOON, make_prices
from tests.invoicing.services.billing import as_issued, by_month, hand, late_cow, lines_of, worked
from visits.models import Trim


@pytest.fixture
def issued(house):
    make_prices(house.business)
    return as_issued(house, draft_invoice(visit=worked(house), at=NOON))


def late(house):
    return LateWork.objects.within(house.scope).first()


def test_a_late_cow_is_a_draft_of_her_own_without_a_second_call_out(house, issued):
    late_cow(house, issued.visit)
    assert [piece.item for piece in bill_difference(issued.visit).added] == ["functional"]
    (extra,) = draft_late_work(visit=issued.visit, hand=hand(house))
    assert (lines_of(extra), extra.visit) == ({"functional": (1, 10)}, issued.visit)
    assert not bill_difference(issued.visit)
    assert late(house) is None
    discard_draft(invoice=extra, at=NOON)
    assert late(house).added == 1


def test_a_cow_taken_back_is_a_credit_note_that_lets_go_of_her(house, issued):
    trims = Trim.objects.within(house.scope).filter(visit=issued.visit, kind="corrective")
    trims.update(taken_back_at=NOON)
    draft_invoice(visit=issued.visit, at=NOON)
    assert late(house).gone == 2  # the cow and her block
    (note,) = draft_late_work(visit=issued.visit, hand=hand(house, "Cow of another farm"))
    assert (note.kind, lines_of(note)) == ("credit_note", {"corrective": (1, 10), "block": (1, 10)})
    assert late(house) is None
    issue_invoice(invoice=note, at=NOON, by=house.owner)
    assert BilledWork.objects.within(house.scope).filter(holds=True).count() == 2
    assert not bill_difference(issued.visit)


def test_a_cow_of_another_kind_is_credited_and_billed_at_the_price_of_her_day(house, issued):
    Trim.objects.within(house.scope).filter(visit=issued.visit, kind="functional").update(kind="corrective")
    Price.objects.within(house.scope).filter(item="corrective").update(unit_price=14)
    note, extra = draft_late_work(visit=issued.visit, hand=hand(house))
    assert lines_of(note) == {"functional": (1, 10)}
    assert lines_of(extra) == {"corrective": (1, 14)}


def test_for_a_farm_billed_by_the_month_it_goes_on_the_draft_of_the_month(house, issued):
    by_month(house.farm)
    late_cow(house, issued.visit)
    (extra,) = draft_late_work(visit=issued.visit, hand=hand(house))
    assert (extra.visit, extra.period_from.month) == (None, 3)
    assert lines_of(extra) == {"functional": (1, 10)}


def test_where_the_bill_fits_nothing_is_drafted(house, issued):
    with pytest.raises(BillFits):
        draft_late_work(visit=issued.visit, hand=hand(house))

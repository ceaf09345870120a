"""The office's list of bills that no longer fit."""

from invoicing.models import LateWork
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.note_late_work import note_late_work
from tests.factories import NOON, make_prices
from tests.invoicing.services.billing import late_cow, worked


def test_a_visit_comes_onto_it_and_goes_off_it_by_itself(house):
    make_prices(house.business)
    visit = worked(house, 1)
    assert note_late_work(visit=visit, at=NOON) is None, "nothing bills it yet"
    draft_invoice(visit=visit, at=NOON)
    trim = late_cow(house, visit)
    note_late_work(visit=visit, at=NOON)
    assert note_late_work(visit=visit, at=NOON).added == 1
    assert LateWork.objects.within(house.scope).count() == 1
    trim.delete()
    assert note_late_work(visit=visit, at=NOON) is None
    assert not LateWork.objects.within(house.scope).exists()

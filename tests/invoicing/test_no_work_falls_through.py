"""Whatever the office does, each piece of work of a finished visit is in a place that somebody looks at.

It is held once (by a draft, an issued invoice, or "not billed, because"), or its visit stands on one list of what is to
be billed: ready, or late work. Only what costs nothing may stand nowhere.
"""

from contextlib import suppress
from datetime import timedelta

import pytest
from django.db import transaction
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from invoicing.domain.pricing import PriceItem
from invoicing.models import BilledWork, Invoice, InvoiceLine, LateWork, Price, PriceList
from invoicing.selectors.ready_to_bill import unbilled_visits
from invoicing.selectors.visit_work import visit_works
from invoicing.services.credit_invoice import CannotCredit, draft_credit_note
from invoicing.services.discard_draft import discard_draft
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.draft_late_work import BillFits, draft_late_work
from invoicing.services.leave_unbilled import bill_after_all, leave_unbilled
from invoicing.services.let_go_of_work import let_go_of_work
from invoicing.services.make_draft import PriceMissing
from invoicing.services.open_draft import ChangeRefused
from invoicing.services.strike_line import strike_line
from tests.factories import (
    NOON,
    TUESDAY_TEN,
    finish,
    make_cow,
    make_prices,
    put_down,
    trimmed_foot,
    under_way,
)
from tests.invoicing.services.billing import as_issued, by_month, hand, late_cow, worked
from visits.domain.visit_states import VisitState
from visits.models import TrimmedFoot, Visit


@pytest.fixture
def house(house):
    make_prices(house.business)
    return house


def fallen_through(house):
    """Keys of work that nothing holds and whose visit is on no list; a visit on two lists is as wrong."""
    scope = house.scope
    visits = list(Visit.objects.within(scope).in_state(VisitState.FINISHED).select_related("business"))
    held = set(BilledWork.objects.within(scope).filter(holds=True).values_list("key", flat=True))
    ready = set(unbilled_visits(scope).values_list("pk", flat=True))
    late = set(LateWork.objects.within(scope).values_list("visit_id", flat=True))
    assert not ready & late
    pieces = [
        piece
        for work in visit_works(scope, visits)
        for piece in work.pieces
        if work.visit_id not in ready | late
    ]
    return [piece.key for piece in pieces if piece.key not in held]


def late_work(house):
    return list(LateWork.objects.within(house.scope).values_list("added", "gone"))


def test_what_has_no_price_of_its_own_is_not_late(house):
    Price.objects.within(house.scope).filter(item=PriceItem.CALL_OUT).update(unit_price=0)
    visit = worked(house)
    as_issued(house, draft_invoice(visit=visit, at=NOON))
    draft_invoice(visit=visit, at=NOON)
    assert late_work(house) == []


def test_a_draft_that_lacks_a_cow_without_a_price_says_so(house):
    visit = worked(house)
    draft = draft_invoice(visit=visit, at=NOON)
    late_cow(house, visit)
    price = Price.objects.within(house.scope).get(item=PriceItem.FUNCTIONAL)
    price.delete()
    assert draft_invoice(visit=visit, at=NOON) == draft
    assert late_work(house) == [(1, 0)]
    assert not fallen_through(house)
    with pytest.raises(PriceMissing):
        draft_late_work(visit=visit, hand=hand(house))
    price.pk = None
    price.save()
    (made,) = draft_late_work(visit=visit, hand=hand(house))
    assert made == draft
    assert late_work(house) == []
    rows = InvoiceLine.objects.within(house.scope).filter(invoice=draft, item=PriceItem.FUNCTIONAL)
    assert rows.get().quantity == 2


def test_late_work_of_a_draft_is_settled_when_it_is_drafted_anew(house):
    by_month(house.farm)
    visit = worked(house)
    draft_invoice(visit=visit, at=NOON)
    late_cow(house, visit)
    price = Price.objects.within(house.scope).get(item=PriceItem.FUNCTIONAL)
    price.delete()
    draft_invoice(visit=visit, at=NOON)
    assert late_work(house) == [(1, 0)]
    price.pk = None
    price.save()
    draft_invoice(visit=visit, at=NOON)
    assert late_work(house) == []
    assert not fallen_through(house)


def test_a_late_recheck_under_guarantee_makes_no_invoice_over_nothing(house):
    PriceList.objects.within(house.scope).update(guarantee_days=30)
    first = worked(house, cows=1)
    second = under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=8))
    put_down(second, make_cow(house.farm, "778"), trimmed_foot())
    second = finish(second, house.trimmer)
    as_issued(house, draft_invoice(visit=second, at=NOON))
    cow, again = first.trims.within(house.scope).get().cow, late_cow(house, second)
    again.cow = cow
    again.save()
    TrimmedFoot.objects.create(business=house.business, trim=again, foot="LH")
    draft_invoice(visit=second, at=NOON)
    assert late_work(house) == []
    with pytest.raises(BillFits):
        draft_late_work(visit=second, hand=hand(house))


ACTS = ("cow", "draft", "issue", "credit", "strike", "discard", "late", "leave", "bill after all")


class Office:
    """One visit, and whatever may be done with it, in any order; what is refused changes nothing."""

    def __init__(self, house):
        self.house, self.visit = house, worked(house)

    def do(self, act, which):
        getattr(self, f"_{act.replace(' ', '_')}")(which)

    def _papers(self, **narrowed):
        return list(Invoice.objects.within(self.house.scope).filter(**narrowed).order_by("pk"))

    def _cow(self, which):
        late_cow(self.house, self.visit)
        draft_invoice(visit=self.visit, at=NOON)  # because: show_cows starts the job

    def _draft(self, which):
        draft_invoice(visit=self.visit, at=NOON)

    def _issue(self, which):
        for row in self._papers(state="draft")[:1]:
            as_issued(self.house, row, f"{row.kind}-{row.pk}")
            if row.is_credit_note:
                let_go_of_work(credit_note=row)

    def _credit(self, which):
        for row in self._papers(state="issued", kind="invoice")[:1]:
            with suppress(CannotCredit):
                draft_credit_note(
                    invoice=row,
                    asks=None,
                    reason="Wrong",
                    work_may_be_billed_again=which,
                    at=NOON,
                    by=self.house.office,
                )

    def _strike(self, which):
        line = InvoiceLine.objects.within(self.house.scope).filter(
            invoice__state="draft", invoice__kind="invoice"
        )
        for row in line.select_related("invoice")[:1]:
            with suppress(ChangeRefused):
                strike_line(line=row, hand=hand(self.house))

    def _discard(self, which):
        for row in self._papers(state="draft")[-1:]:
            discard_draft(invoice=row, at=NOON)

    def _late(self, which):
        with suppress(BillFits):
            draft_late_work(visit=self.visit, hand=hand(self.house))

    def _leave(self, which):
        leave_unbilled(visit=self.visit, hand=hand(self.house))

    def _bill_after_all(self, which):
        bill_after_all(visit=self.visit, hand=hand(self.house))


@pytest.mark.parametrize("month", [False, True])
def test_no_order_of_acts_loses_work(house, month):
    if month:
        by_month(house.farm)

    @settings(max_examples=8, suppress_health_check=list(HealthCheck))
    @given(st.lists(st.tuples(st.sampled_from(ACTS), st.booleans()), min_size=3, max_size=9))
    def play(acts):
        with transaction.atomic():
            office = Office(house)
            for act, which in acts:
                office.do(act, which)
                assert not fallen_through(house), acts
            transaction.set_rollback(True)

    play()

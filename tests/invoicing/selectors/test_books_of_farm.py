"""What stays of a farm's money, and what of it is not done."""

from datetime import timedelta
from decimal import Decimal

from invoicing.models import Reminder
from invoicing.selectors.books_of_farm import books_of_farm, loose_ends
from tests.factories import MONDAY, NOON, finish, make_farm, make_house, put_down, trimmed_foot, under_way
from tests.invoicing.drafts import plain_draft
from tests.invoicing.issued_papers import credited, issued
from tests.invoicing.services.test_note_payment import note
from tests.invoicing.services.test_queue_sending import queue


def test_books_are_counted_by_kind_and_a_proposal_is_none(house):
    bill = issued(house.farm, "100")
    credited(bill, "10")
    note(house, "5")
    plain_draft(house)
    for step, state in enumerate(("approved", "proposed"), start=1):
        Reminder.objects.create(
            business=house.business, invoice=bill, step=step, state=state, proposed_at=NOON
        )
    issued(make_farm(house.business, "High Croft", by=house.owner), "70")
    assert books_of_farm(house.scope, house.farm) == {
        **{"invoices": 1, "credit notes": 1, "payments": 1},
        "reminders that went out": 1,
    }


def test_what_is_owed_either_way_and_what_waits_is_told(house):
    bill = issued(house.farm, "100", on=MONDAY - timedelta(days=60))
    credited(bill, "10")
    note(house, "45", {bill.pk: Decimal(40)})
    plain_draft(house)
    queue(house)
    ends = loose_ends(house.scope, house.farm, MONDAY)
    (gbp,) = ends.to_pay
    assert (gbp.bills, gbp.overdue, gbp.credit) == (60, 60, 10)
    assert ends.unused == [("GBP", 5)]
    assert (ends.unbilled, ends.changed, ends.drafts, ends.mails) == (0, 0, 1, 1)
    assert ends.is_any


def test_a_finished_visit_without_a_bill_is_a_loose_end_of_its_own_farm_alone(house):
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, trimmed_foot())
    finish(visit, house.trimmer)
    other = make_farm(house.business, "High Croft", by=house.owner)
    issued(other, "70")
    assert loose_ends(house.scope, house.farm, MONDAY).unbilled == 1
    assert loose_ends(house.scope, other, MONDAY).unbilled == 0


def test_a_farm_without_money_has_none(house):
    stranger = make_house("Elsewhere Trimming")
    issued(stranger.farm, "70")
    assert books_of_farm(house.scope, house.farm) == {}
    assert not loose_ends(house.scope, house.farm, MONDAY).is_any

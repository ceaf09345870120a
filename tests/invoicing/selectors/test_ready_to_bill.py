"""What waits to be billed."""

from datetime import date

from invoicing.selectors.money_desk import money_desk
from invoicing.selectors.ready_to_bill import ready_to_bill, unbilled_visits
from invoicing.services.draft_invoice import draft_invoice
from tests.factories import NOON, finished, make_house, make_prices
from tests.invoicing.drafts import plain_draft
from tests.invoicing.issued_papers import issued
from tests.invoicing.services.billing import worked

APRIL = date(2026, 4, 1)


def test_finished_visits_with_cows_wait_until_they_are_drafted(house):
    finished(house.farm, house.van)  # nobody was put down
    visit = worked(house, 1, days=1)
    worked(make_house("Fell & Beck"), 1)
    ready = ready_to_bill(house.scope, APRIL)
    assert (list(ready.visits), ready.visit_count, ready.visits[0].cows) == ([visit], 1, 1)
    make_prices(house.business)
    draft_invoice(visit=visit, at=NOON)
    assert ready_to_bill(house.scope, APRIL).is_empty


def test_a_visit_that_the_first_release_billed_does_not_wait(house):
    visit = worked(house, 1)
    bill = issued(house.farm, "10.00", visit=visit)
    assert not unbilled_visits(house.scope).exists()
    assert draft_invoice(visit=visit, at=NOON) == bill


def test_months_are_told_apart_by_whether_they_are_over(house):
    over = plain_draft(house, period_from=date(2026, 3, 1), period_until=date(2026, 3, 31))
    runs = plain_draft(house, period_from=date(2026, 4, 1), period_until=date(2026, 4, 30))
    ready = ready_to_bill(house.scope, APRIL)
    assert (list(ready.months), list(ready.running)) == ([over], [runs])
    assert money_desk(house.scope, "GBP", APRIL).months_over == 1


def test_the_desk_keeps_currencies_apart_its_own_first(house):
    issued(house.farm, "40.00", date(2026, 1, 1), currency="EUR")
    issued(house.farm, "50.00", date(2026, 1, 1))
    issued(house.farm, "60.00", date(2026, 3, 31))
    desk = money_desk(house.scope, "GBP", APRIL)
    assert [(heap.currency, heap.count, heap.sum) for heap in desk.open] == [("GBP", 2, 110), ("EUR", 1, 40)]
    assert [(heap.currency, heap.count, heap.sum) for heap in desk.overdue] == [
        ("GBP", 1, 50),
        ("EUR", 1, 40),
    ]

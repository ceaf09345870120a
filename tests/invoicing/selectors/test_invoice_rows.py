"""Lists, sums and the walk through the drafts."""

from datetime import date
from decimal import Decimal as D

from invoicing.selectors.invoice_rows import (
    Show,
    Wanted,
    draft_rows,
    issued_rows,
    next_draft,
    sums_of,
    years_issued,
)
from tests.factories import make_house
from tests.invoicing.drafts import plain_draft
from tests.invoicing.issued_papers import issued

TODAY = date(2026, 4, 1)


def test_sums_count_credit_notes_down_and_keep_currencies_apart(house):
    bill = issued(house.farm, "40.00")
    issued(house.farm, "15.00", kind="credit_note", corrects=bill, reason="x", is_open=False)
    issued(house.farm, "7.00", currency="EUR")
    sums = sums_of(issued_rows(house.scope, Wanted(), TODAY))
    assert [(row.currency, row.count, row.gross) for row in sums] == [("EUR", 1, 7), ("GBP", 2, 25)]
    assert [row.gross for row in sums_of(issued_rows(house.scope, Wanted(show=Show.CREDIT), TODAY))] == [-15]


def test_only_ones_own_are_found(house):
    issued(make_house("Fell & Beck").farm, "40.00")
    assert not issued_rows(house.scope, Wanted(), TODAY).exists()
    assert sums_of(issued_rows(house.scope, Wanted(), TODAY)) == []
    assert list(years_issued(house.scope)) == []
    assert next_draft(house.scope, TODAY) is None


def test_years_run_from_the_last_to_the_first(house):
    issued(house.farm, "1.00", date(2026, 2, 2))
    issued(house.farm, "1.00", date(2024, 2, 2))
    assert list(years_issued(house.scope)) == [2026, 2025, 2024]


def test_drafts_are_walked_in_turn_and_a_month_that_runs_is_passed_over(house):
    first, second = plain_draft(house, "10.00"), plain_draft(house, "20.00")
    plain_draft(house, "30.00", period_from=date(2026, 4, 1), period_until=date(2026, 4, 30))
    assert next_draft(house.scope, TODAY) == first
    assert next_draft(house.scope, TODAY, first) == second
    assert next_draft(house.scope, TODAY, second) == first
    assert draft_rows(house.scope).count() == 3
    assert sums_of(draft_rows(house.scope))[0].net == D(60)

"""Closing a period, opening it again, and what is refused inside."""

from datetime import date, timedelta

import pytest
from django.db import transaction

from invoicing.models import PeriodLock
from invoicing.selectors.period_lock import lock_history, locked_until
from invoicing.services.issue_invoice import issue_invoice
from invoicing.services.lock_period import CannotLock, PeriodLocked, lock_period, refuse_locked
from tests.factories import NOON, make_house
from tests.invoicing.drafts import plain_draft
from tests.many_hands import ManyHands

JANUARY = date(2026, 1, 31)


@pytest.fixture
def house(db):
    return make_house()


def lock(house, until=JANUARY, why="The accountant has it.", at=NOON):
    return lock_period(scope=house.scope, until=until, why=why, at=at, by=house.owner)


def test_the_last_day_inside_is_refused_and_the_day_after_is_not(house):
    lock(house)
    with pytest.raises(PeriodLocked, match=r"31 January 2026.*locked up to 31 January 2026"):
        refuse_locked(scope=house.scope, day=JANUARY)
    refuse_locked(scope=house.scope, day=JANUARY + timedelta(days=1))


def test_another_business_is_not_locked_with_it(house):
    lock(house)
    assert locked_until(make_house("Fell & Beck").scope) is None


def test_opening_is_a_row_with_its_own_reason(house):
    lock(house)
    lock(house, None, "One bill was forgotten.")
    assert locked_until(house.scope) is None
    refuse_locked(scope=house.scope, day=JANUARY)
    assert [row.why for row in lock_history(house.scope)] == [
        "One bill was forgotten.",
        "The accountant has it.",
    ]


@pytest.mark.parametrize(
    ("until", "why", "said"),
    [
        (NOON.date(), "Why not", "days that are over"),
        (JANUARY, "  ", "Say why"),
        (None, "Opened", "holds already"),
    ],
)
def test_a_lock_that_makes_no_sense_is_refused_in_words(house, until, why, said):
    with pytest.raises(CannotLock, match=said):
        lock(house, until, why)
    assert not PeriodLock.objects.within(house.scope).exists()


def test_an_invoice_is_not_issued_with_its_tax_point_or_its_day_in_a_closed_period(house):
    invoice = plain_draft(house)
    lock(house, date(2026, 3, 2), at=NOON + timedelta(days=30))
    for at, said in (
        (NOON + timedelta(days=40), "The tax point is 2 March"),
        (NOON, "The day of issue is 2 March"),
    ):
        with pytest.raises(PeriodLocked, match=said):
            issue_invoice(invoice=invoice, at=at, by=house.office)


@pytest.mark.services
@pytest.mark.django_db(transaction=True)
def test_no_lock_is_put_on_while_somebody_writes_inside_the_period(tmp_path, monkeypatch):
    """On SQLite, which lets in one writer at a time, the lock waits its turn."""
    house = make_house()
    hands = ManyHands(tmp_path, monkeypatch)
    with transaction.atomic():
        refuse_locked(scope=house.scope, day=JANUARY)
        (said,) = hands(_try_to_lock, [house])
    assert said == "Somebody is issuing or booking just now: try again in a moment."
    assert hands(_try_to_lock, [house]) == ["locked"]


def _try_to_lock(house):
    try:
        lock(house)
    except CannotLock as refused:
        return refused.message
    return "locked"

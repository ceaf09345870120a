from datetime import date
from decimal import Decimal

import pytest

from invoicing.domain.settling import (
    OpenItem,
    PaymentMethod,
    SettledBy,
    faults_of_shares,
    is_part_of,
    oldest_first,
)

MARCH = date(2026, 3, 2)


def item(key, amount, due=MARCH, issued=MARCH):
    return OpenItem(key, Decimal(amount), due, issued)


@pytest.mark.parametrize("kind", [PaymentMethod, SettledBy])
def test_each_has_words_of_its_own(kind):
    assert len({member.label for member in kind}) == len(kind)


def test_a_part_is_above_nought_no_more_than_all_and_in_decimals_of_the_currency():
    assert is_part_of(Decimal("10.50"), Decimal("10.50"), 2)
    assert is_part_of(Decimal("0.01"), Decimal("10.50"), 2)
    for amount in ("0", "-1", "10.51", "1.005", "1e40"):
        assert not is_part_of(Decimal(amount), Decimal("10.50"), 2)


def test_what_was_due_first_is_settled_first():
    items = [item(1, 50), item(2, 70, date(2026, 1, 5)), item(3, 20, None, date(2026, 2, 1))]
    assert oldest_first(Decimal(100), items) == {2: 70, 3: 20, 1: 10}
    assert oldest_first(Decimal(70), items) == {2: 70}
    assert oldest_first(Decimal(500), items) == {2: 70, 3: 20, 1: 50}
    assert oldest_first(Decimal(0), items) == {}


@pytest.mark.parametrize(
    ("amount", "shares", "fault"),
    [
        (100, {1: "50", 2: "50"}, ""),
        (100, {1: "50.01"}, "INV-1: only 50 is open"),
        (60, {1: "50", 2: "10.01"}, "60.01 is set against invoices"),
        (100, {1: "0"}, "above nought"),
        (100, {1: "0.001"}, "more decimals"),
    ],
)
def test_each_fault_is_named(amount, shares, fault):
    told = faults_of_shares(
        Decimal(amount),
        {key: Decimal(share) for key, share in shares.items()},
        {1: Decimal(50), 2: Decimal(70)},
        {1: "INV-1", 2: "INV-2"},
    )
    assert (told == []) if not fault else (len(told) == 1 and fault in told[0])

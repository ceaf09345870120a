"""What will not be paid."""

from decimal import Decimal

import pytest

from invoicing.services.want_reason import ReasonMissing
from invoicing.services.write_off import CannotWriteOff, write_off
from tests.factories import NOON
from tests.invoicing.issued_papers import credited, issued


def off(house, bill, amount=None, reason="The farm is given up"):
    return write_off(invoice=bill, amount=amount, reason=reason, at=NOON, by=house.owner)


def test_the_whole_or_a_part(house):
    bill = issued(house.farm, "100")
    assert off(house, bill, Decimal("0.05"), "Rounded down").amount == Decimal("0.05")
    row = off(house, bill)
    bill.refresh_from_db()
    assert (row.amount, bill.is_open, row.reason) == (Decimal("99.95"), False, "The farm is given up")


@pytest.mark.parametrize("amount", ["0", "-1", "100.01", "1.001"])
def test_what_does_not_fit(house, amount):
    with pytest.raises(CannotWriteOff, match=r"100\.00"):
        off(house, issued(house.farm, "100"), Decimal(amount))


def test_only_an_issued_invoice_and_with_a_reason(house):
    with pytest.raises(CannotWriteOff):
        off(house, credited(issued(house.farm, "100"), "10"))
    with pytest.raises(ReasonMissing):
        off(house, issued(house.farm, "100"), reason=" ")

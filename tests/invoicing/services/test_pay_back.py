"""Money that goes back: never more than there is."""

from datetime import timedelta
from decimal import Decimal

import pytest

from invoicing.domain.settling import PaymentMethod
from invoicing.selectors.payment_rest import payment_rest
from invoicing.services.pay_back import CannotPayBack, MoneyBack, pay_back
from tests.factories import MONDAY, NOON
from tests.invoicing.issued_papers import credited, issued
from tests.invoicing.services.test_note_payment import DAY, note


def back(house, source, amount, day=DAY):
    money = MoneyBack(source, day, Decimal(amount), PaymentMethod.BANK, "As asked")
    return pay_back(money=money, at=NOON, by=house.owner)


def test_the_rest_of_a_payment(house):
    bill = issued(house.farm, "60")
    payment = note(house, "100", {bill.pk: Decimal(60)})
    out = back(house, payment, "15.50")
    assert (out.amount, out.pays_back, payment_rest(payment)) == (
        Decimal("-15.50"),
        payment,
        Decimal("24.50"),
    )
    with pytest.raises(CannotPayBack, match=r"24\.50"):
        back(house, payment, "24.51")


def test_what_a_credit_note_is_good_for(house):
    note_row = credited(issued(house.farm, "100"), "30")
    back(house, note_row, "20")
    note_row.refresh_from_db()
    assert (note_row.settled, note_row.is_open) == (20, True)
    back(house, note_row, "10")
    note_row.refresh_from_db()
    assert not note_row.is_open
    with pytest.raises(CannotPayBack):
        back(house, note_row, "0.01")


@pytest.mark.parametrize("amount", ["0", "-1", "1.001"])
def test_an_amount_that_cannot_be(house, amount):
    with pytest.raises(CannotPayBack):
        back(house, note(house, "10"), amount)


def test_neither_ahead_of_its_day_nor_of_an_invoice(house):
    with pytest.raises(CannotPayBack, match="ahead"):
        back(house, note(house, "10"), "1", MONDAY + timedelta(days=1))
    with pytest.raises(CannotPayBack):
        back(house, issued(house.farm, "10"), "1")

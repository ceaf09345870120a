"""What is left of a payment is used later."""

from decimal import Decimal

import pytest

from invoicing.selectors.payment_rest import payment_rest
from invoicing.services.set_against import CannotSettle
from invoicing.services.use_rest import use_rest
from tests.factories import MONDAY, NOON
from tests.invoicing.issued_papers import issued
from tests.invoicing.services.test_note_payment import note


def test_the_rest_settles_a_later_invoice_as_of_the_day_it_is_used(house):
    payment, bill = note(house, "100"), issued(house.farm, "60")
    made = use_rest(payment=payment, shares={bill.pk: Decimal(60)}, at=NOON, by=house.owner)
    bill.refresh_from_db()
    assert (bill.is_open, payment_rest(payment), made[0].on) == (False, 40, MONDAY)
    more = issued(house.farm, "60")
    with pytest.raises(CannotSettle, match=r"only 40\.00"):
        use_rest(payment=payment, shares={more.pk: Decimal(60)}, at=NOON, by=house.owner)


def test_nothing_named_is_refused(house):
    with pytest.raises(CannotSettle, match="at least one"):
        use_rest(payment=note(house, "100"), shares={}, at=NOON, by=house.owner)

"""Whose invoices a payment may settle."""

from decimal import Decimal

import pytest

from farms.models import Payer
from invoicing.models import Invoice
from invoicing.services.set_against import CannotSettle, set_against
from invoicing.services.take_back_payment import take_back_payment
from tests.factories import NOON, make_farm
from tests.invoicing.issued_papers import credited, issued
from tests.invoicing.services.test_note_payment import DAY, note


def against(house, payment, bill, amount="10"):
    shares = {bill.pk: Decimal(amount)}
    return set_against(payment=payment, shares=shares, on=DAY, at=NOON, by=house.owner)


def test_another_farm_only_when_one_payer_stands_for_both(house):
    second = make_farm(house.business, "High Croft", by=house.owner)
    bill = issued(second, "10")
    with pytest.raises(CannotSettle, match="another farm"):
        against(house, note(house, "10"), bill)
    payer = Payer.objects.create(business=house.business, name="The Estate")
    for farm in (house.farm, second):
        farm.payer = payer
        farm.save()
    bill = issued(second, "10")
    assert against(house, note(house, "10"), bill)[0].amount == 10


def test_neither_a_draft_nor_a_credit_note_nor_what_was_taken_back(house):
    payment, bill = note(house, "30"), issued(house.farm, "10")
    with pytest.raises(CannotSettle, match="no issued invoice"):
        against(house, payment, credited(bill, "10"))
    draft = Invoice.objects.create(
        business=house.business, farm=house.farm, currency="GBP", drafted_at=NOON, tax_point=DAY, payable=10
    )
    with pytest.raises(CannotSettle, match="A draft"):
        against(house, payment, draft)
    take_back_payment(payment=payment, because="Twice", at=NOON, by=house.owner)
    with pytest.raises(CannotSettle, match="taken back"):
        against(house, payment, bill)

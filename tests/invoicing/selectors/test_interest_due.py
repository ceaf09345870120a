"""What is claimed goes by the money rules, and a payment counts from the day it came."""

from datetime import date, timedelta
from decimal import Decimal as D

import pytest

from invoicing.domain.settling import PaymentMethod
from invoicing.models import MoneyRules, ReferenceRate
from invoicing.selectors.interest_due import Claim, claim_for, claim_rules, paid_parts, read_bands
from invoicing.services.note_payment import MoneyReceived, note_payment
from invoicing.services.set_off_credit import set_off_credit
from tests.factories import NOON
from tests.invoicing.booked import booked, line


@pytest.fixture
def house(house):
    ReferenceRate.objects.create(
        business=house.business, percent=D("0.5"), valid_from=date(2020, 1, 1), source="A page"
    )
    return house


def claim(house, invoice, days, **rules):
    put = MoneyRules(business=house.business, fixed_sums=[["0", "40"], ["1000", "70"]], **rules)
    day = invoice.due_on + timedelta(days=days)
    return claim_for(invoice, day, claim_rules(house.scope, put), paid_parts(house.scope, [invoice.pk]))


def test_nothing_is_claimed_unless_the_business_wants_it_and_it_is_late(house):
    invoice = booked(house.farm, line("1000", "0", "Z"))
    assert claim(house, invoice, 50) == Claim()
    assert claim(house, invoice, 0, charges_interest=True) == Claim()


def test_margin_and_days_of_the_year_are_the_business_s_own(house):
    invoice = booked(house.farm, line("1000", "0", "Z"))
    usual = claim(house, invoice, 50, charges_interest=True)
    assert (usual.interest, usual.fixed_sum) == (D("11.64"), 70)
    other = claim(house, invoice, 50, charges_interest=True, interest_margin=D(9), interest_days_in_year=360)
    assert other.interest == D("13.19")  # 1000 x 9.5 % x 50 / 360


def test_a_fixed_sum_is_claimed_in_the_currency_of_the_business_alone(house):
    invoice = booked(house.farm, line("1000", "0", "Z"), currency="EUR")
    found = claim(house, invoice, 50, charges_interest=True)
    assert (found.interest, found.fixed_sum) == (D("11.64"), 0)


def test_a_payment_counts_from_the_day_it_came_not_the_day_it_was_noted(house):
    invoice = booked(house.farm, line("1000", "0", "Z"), on=date(2026, 1, 1))
    came = invoice.due_on + timedelta(days=11)
    money = MoneyReceived(house.farm, came, D(600), "GBP", PaymentMethod.BANK, {invoice.pk: D(600)})
    note_payment(money=money, at=NOON, by=house.office)
    found = claim(house, invoice, 50, charges_interest=True)
    assert [(part.days, part.base) for part in found.stretches] == [(10, 1000), (40, 400)]
    assert (found.interest, found.fixed_sum) == (D("6.05"), 70)


def test_a_missing_rate_is_told_and_the_fixed_sum_stays(house):
    ReferenceRate.objects.within(house.scope).delete()
    found = claim(house, booked(house.farm, line("10", "0", "Z")), 5, charges_interest=True)
    assert ("31 December 2025" in found.problem, found.interest, found.fixed_sum) == (True, 0, 40)


@pytest.mark.parametrize(
    ("kept", "bands"), [([["1000", "70"], [0, "40"]], ((D(0), D(40)), (D(1000), D(70)))), (None, ())]
)
def test_bands_are_read_in_order(kept, bands):
    assert read_bands(kept) == bands


def test_what_was_billed_wrongly_and_credited_was_never_owed(house):
    invoice = booked(house.farm, line("1000", "0", "Z"), on=date(2026, 1, 1))
    note = booked(house.farm, line("600", "0", "Z"), on=date(2026, 2, 20), corrects=invoice)
    another = booked(house.farm, line("100", "0", "Z"), on=date(2026, 1, 1))
    on_another = booked(house.farm, line("100", "0", "Z"), on=date(2026, 2, 1), corrects=another)
    for one in (note, on_another):
        set_off_credit(credit_note=one, invoice=invoice, at=NOON, by=house.office)
    found = claim(house, invoice, 50, charges_interest=True)
    assert [(part.days, part.base) for part in found.stretches] == [(45, 400), (5, 300)]
    assert found.fixed_sum == 40

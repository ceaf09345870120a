"""Numbers of a series: by kind, by year or running on, in the order of days, none twice."""

from datetime import date, timedelta

import pytest
from django.db import transaction

from invoicing.models import Invoice, MoneyRules, NumberSeries
from invoicing.services.take_number import NumbersOutOfOrder, NumberTaken, take_number
from tests.factories import NOON, make_house
from tests.invoicing.drafts import issue, plain_draft

TODAY = NOON.date()


def rules(house, **fields):
    return MoneyRules.objects.create(business=house.business, **fields)


def bill(house, kind="invoice"):
    """Enough of an invoice to be numbered; nothing of it is stored."""
    return Invoice(business=house.business, farm=house.farm, kind=kind)


def test_invoices_and_credit_notes_have_series_of_their_own(house):
    rules(house, invoice_prefix="R", credit_prefix="G")
    taken = [
        take_number(invoice=bill(house, kind), day=TODAY) for kind in ("invoice", "credit_note", "invoice")
    ]
    assert taken == ["R-2026-0001", "G-2026-0001", "R-2026-0002"]


def test_one_prefix_for_both_is_one_series(house):
    rules(house, invoice_prefix="A", credit_prefix="A", series_by_year=False)
    taken = [take_number(invoice=bill(house, kind), day=TODAY) for kind in ("invoice", "credit_note")]
    assert taken == ["A-0001", "A-0002"]


def test_a_series_that_runs_on_does_not_begin_anew_in_january(house):
    rules(house, series_by_year=False)
    days = (date(2026, 12, 31), date(2027, 1, 1))
    assert [take_number(invoice=bill(house), day=day) for day in days] == ["INV-0001", "INV-0002"]


def test_what_is_rolled_back_gives_its_number_back(house):
    with pytest.raises(ZeroDivisionError), transaction.atomic():
        take_number(invoice=bill(house), day=TODAY)
        raise ZeroDivisionError
    assert take_number(invoice=bill(house), day=TODAY) == "INV-2026-0001"


def test_a_number_is_not_given_for_a_day_before_that_of_the_last(house):
    issue(plain_draft(house), house)
    with pytest.raises(NumbersOutOfOrder, match=r"INV-2026-0001 was issued on 2 March 2026"):
        issue(plain_draft(house), house, NOON - timedelta(days=1))
    assert issue(plain_draft(house), house).number == "INV-2026-0002"


def test_a_number_that_another_series_gave_is_refused_and_none_is_lost(house):
    issue(plain_draft(house), house)
    rules(house, invoice_prefix="INV-2026", series_by_year=False)
    with pytest.raises(NumberTaken, match="another prefix"):
        take_number(invoice=bill(house), day=TODAY)
    assert not NumberSeries.objects.within(house.scope).filter(prefix="INV-2026").exists()


def test_each_business_counts_for_itself(house):
    other = make_house("Fell & Beck")
    taken = [take_number(invoice=bill(of), day=TODAY) for of in (house, other, house)]
    assert taken == ["INV-2026-0001", "INV-2026-0001", "INV-2026-0002"]


@pytest.mark.parametrize("prefix", ["INV2026", "INV/2026", "I-NV2026"])
def test_numbers_that_a_bank_transfer_cannot_tell_apart_are_not_given(house, prefix):
    issue(plain_draft(house), house)
    rules(house, invoice_prefix=prefix, series_by_year=False)
    with pytest.raises(NumberTaken, match="bank transfer"):
        take_number(invoice=bill(house), day=TODAY)

"""Proposals from the rows there are."""

from decimal import Decimal

from farms.models import Payer
from invoicing.selectors.match_view import match_rows
from tests.factories import make_farm, make_house
from tests.invoicing.issued_papers import issued
from tests.invoicing.services.test_match_entry import booking, match

ACCOUNT = "DE79100000000555000111"


def test_reference_and_who_paid_before(house):
    bill = issued(house.farm, "60", number="INV-2026-0042")
    match(house, booking(house, "1", party_account=ACCOUNT, party_name="J. Somebody"))
    entry = booking(house, "60", reference=bill.creditor_reference, party_account=ACCOUNT)
    (row,) = match_rows(house.scope, [entry])
    assert (row.is_sure, row.shares[0].number, row.rest) == (True, "INV-2026-0042", 0)
    assert set(row.best.reasons) == {"Payment reference", "Amount is what is open", "Account has paid before"}
    by_name = booking(house, "60", party_name="J. Somebody")
    assert "Name" in match_rows(house.scope, [by_name])[0].best.reasons


def test_a_payer_with_two_farms_is_one(house):
    second = make_farm(house.business, "High Croft", by=house.owner)
    payer = Payer.objects.create(business=house.business, name="Quillstone Estate")
    for farm in (house.farm, second):
        farm.payer = payer
        farm.save()
    bills = [issued(house.farm, "60"), issued(second, "40.50")]
    entry = booking(house, "100.50", party_name="QUILLSTONE ESTATE")
    (row,) = match_rows(house.scope, [entry])
    assert [share.key for share in row.shares] == [bill.pk for bill in bills]
    assert {share.farm_name for share in row.shares} == {"Low Croft", "High Croft"}


def test_one_that_may_have_come_in_another_form_is_never_sure(house):
    bill = issued(house.farm, "60", number="INV-2026-0042")
    entry = booking(house, "60", reference=bill.creditor_reference)
    booking(house, "60", form="csv", text="INV-2026-0042")
    (row,) = match_rows(house.scope, [entry])
    assert not row.is_sure


def test_other_currencies_and_businesses_are_left_out(house):
    issued(house.farm, "60", currency="USD", number="INV-2026-0042")
    issued(make_house("Fell & Beck").farm, "60", number="INV-2026-0042")
    (row,) = match_rows(house.scope, [booking(house, "60", text="INV-2026-0042")])
    assert (row.best, row.shares, row.rest) == (None, (), Decimal(60))


def test_the_number_of_queries_is_fixed(house, django_assert_num_queries):
    entries = [booking(house, "60", party_account=ACCOUNT) for _ in range(12)]
    for _ in range(12):
        issued(house.farm, "60")
    with django_assert_num_queries(3):
        assert len(match_rows(house.scope, entries)) == 12

"""What a farm takes out of the money agrees with its account, and tells of no other farm."""

from datetime import date, timedelta
from decimal import Decimal

from django.db import connection
from django.test.utils import CaptureQueriesContext

from farms.models import Payer
from invoicing.domain.settling import PaymentMethod
from invoicing.selectors.data_of_money import currencies_of, money_tables
from invoicing.selectors.farm_account import farm_account
from invoicing.services.set_off_credit import set_off_credit
from invoicing.services.take_back_payment import take_back_payment
from invoicing.services.write_off import write_off
from tests.factories import MONDAY, NOON, make_farm, make_house
from tests.invoicing.drafts import plain_draft
from tests.invoicing.issued_papers import credited, issued
from tests.invoicing.services.test_note_payment import DAY, note


def tables_of(farm):
    return {table.name: table for table in money_tables(farm, MONDAY)}


def column(table, heading):
    place = table.headings.index(heading)
    return [row[place] for row in table.rows]


def test_paid_state_left_and_balance_agree_with_the_account(house):
    bill, second = issued(house.farm, "100"), issued(house.farm, "60", on=DAY)
    note(house, "40", {bill.pk: Decimal(40)}, payer_name="The Estate", note="For the office")
    set_off_credit(credit_note=credited(bill, "30", on=DAY), invoice=bill, at=NOON, by=house.owner)
    write_off(invoice=bill, reason="Hopeless", at=NOON, by=house.owner, amount=Decimal(30))
    note(house, "5")
    plain_draft(house)
    tables = tables_of(house.farm)
    invoices = tables["invoices"]
    assert column(invoices, "Number")[:2] == [bill.number, second.number]
    assert column(invoices, "Paid") == ["Paid", "To pay", "Set off"]
    assert column(invoices, "Corrects") == ["", "", bill.number]
    assert column(invoices, "To pay") == [100, 60, -30]
    assert column(invoices, "Left") == [0, 60, 0]
    assert column(tables["payments"], "Amount") == [40, 5]
    assert column(tables["payments"], "Not set against anything") == [0, 5]
    assert column(tables["what settled what"], "Amount") == [40, 30, 30]
    assert column(tables["what settled what"], "Settled by") == ["Payment", "Credit note", "Written off"]
    account = farm_account(house.scope, house.farm, bill.issued_on, MONDAY)
    assert column(tables["account"], "Owed then")[-1] == account.closing == 55
    assert account.closing == sum(column(invoices, "Left")) - 5
    told = str([table.rows for table in tables.values()])
    assert "The Estate" in told
    assert "For the office" not in told
    assert "Hopeless" not in told


def test_a_payment_noted_by_mistake_and_another_farms_money_are_not_told(house):
    take_back_payment(
        payment=note(house, "40", payer_name="A Stranger"), because="Of High Croft", at=NOON, by=house.owner
    )
    high = make_farm(house.business, "High Croft", by=house.owner)
    issued(high, "70", number="INV-2026-7070")
    tables = tables_of(house.farm)
    assert [len(table.rows) for table in tables.values()] == [0, 0, 0, 0]
    assert currencies_of(house.farm) == []


def test_money_for_the_payers_other_farm_counts_as_the_office_sees_it(house):
    payer = Payer.objects.create(business=house.business, name="Two Farms Estate")
    high = make_farm(house.business, "High Croft", by=house.owner, payer=payer)
    house.farm.payer = payer
    house.farm.save()
    bill = issued(high, "70")
    note(house, "100", {bill.pk: Decimal(70)})
    tables = tables_of(house.farm)
    assert column(tables["payments"], "Not set against anything") == [30]
    assert column(tables["account"], "Owed then")[-1] == -30


def test_each_currency_begins_on_its_first_day(house):
    early = date(2026, 1, 5)
    issued(house.farm, "100", currency="EUR", on=early)
    issued(house.farm, "100", on=early + timedelta(days=9))
    note(house, "7", received_on=early, method=PaymentMethod.CHEQUE)
    assert currencies_of(house.farm) == [("EUR", early), ("GBP", early)]
    account = tables_of(house.farm)["account"]
    assert column(account, "Currency") == ["EUR", "GBP", "GBP"]
    assert column(account, "Owed then") == [100, -7, 93]


def test_a_yen_has_no_decimals_and_queries_do_not_grow_with_the_rows(house):
    house.farm.business.currency = "JPY"
    house.farm.business.save()
    asked = []
    for _ in range(2):
        for _ in range(2):
            bill = issued(house.farm, "1000")
            set_off_credit(credit_note=credited(bill, "10"), invoice=bill, at=NOON, by=house.owner)
            note(house, "1000", {bill.pk: Decimal(990)}, currency="JPY")
        with CaptureQueriesContext(connection) as queries:
            tables = tables_of(house.farm)
        asked.append(len(queries))
    assert asked[0] == asked[1] < 50
    assert {str(amount) for amount in column(tables["payments"], "Amount")} == {"1000"}


def test_another_business_is_not_asked(house):
    stranger = make_house("Elsewhere Trimming")
    bill = issued(stranger.farm, "70")
    note(stranger, "70", {bill.pk: Decimal(70)})
    assert [len(table.rows) for table in tables_of(stranger.farm).values()] == [1, 1, 1, 2]
    assert not any(table.rows for table in tables_of(house.farm).values())

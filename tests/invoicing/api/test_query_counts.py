"""No list of the money asks the database more often because it is longer."""

from datetime import date
from decimal import Decimal

from django.db import connection
from django.test.utils import CaptureQueriesContext

from invoicing.domain.settling import PaymentMethod
from invoicing.models import Reminder
from invoicing.services.make_invoice_link import make_invoice_link
from invoicing.services.note_payment import MoneyReceived, note_payment
from invoicing.services.set_prices import set_prices
from tests.factories import NOON
from tests.invoicing.api.test_bank import hand_in
from tests.invoicing.issued_papers import issued
from tests.invoicing.services.price_sheets import rate, sheet
from tests.walls.furnished_payments import XML

MOST = 12
LISTS = (
    *("/invoices/", "/payments/", "/bank-entries/", "/bank-proposals/", "/bank-files/", "/reminders/"),
    *("/price-lists/", "/tax-rates/"),
)


def fill(ask, house, number):
    """One row of each list."""
    bill = issued(house.farm, "10.00")
    money = MoneyReceived(
        house.farm, NOON.date(), Decimal(5), "GBP", PaymentMethod.CASH, {bill.pk: Decimal(1)}
    )
    note_payment(money=money, at=NOON, by=house.office)
    Reminder.objects.create(business=house.business, invoice=bill, step=1, proposed_at=NOON)
    make_invoice_link(invoice=bill, at=NOON)
    hand_in(ask, XML.format(name=f"S{number}"))
    set_prices(business=house.business, sheet=sheet(date(2026, 3, number)))
    rate(house.business, f"code-{number}", since=date(2026, 1, number))


def cost(ask, address):
    """(queries, answer): what an address takes once all that is read once was read."""
    ask("GET", address)
    with CaptureQueriesContext(connection) as found:
        told = ask("GET", address)
    assert told.status_code == 200
    return len(found), told


def test_a_list_of_six_costs_what_a_list_of_two_costs(ask, house):
    rate(house.business)
    costs = []
    for numbers in (range(1, 3), range(3, 7)):
        for number in numbers:
            fill(ask, house, number)
        found = {address: cost(ask, address) for address in LISTS}
        assert min(len(told.json()["items"]) for _, told in found.values()) >= numbers[-1]
        costs.append({address: queries for address, (queries, _) in found.items()})
    assert costs[0] == costs[1]
    assert max(costs[1].values()) <= MOST


def test_an_account_and_its_statement_cost_as_little(ask, house):
    rate(house.business)
    addresses = (f"/farms/{house.farm.pk}/account/", f"/farms/{house.farm.pk}/statement.pdf")
    costs = []
    for numbers in (range(1, 3), range(3, 7)):
        for number in numbers:
            fill(ask, house, number)
        costs.append({address: cost(ask, address)[0] for address in addresses})
    assert costs[0] == costs[1]
    assert max(costs[1].values()) <= MOST

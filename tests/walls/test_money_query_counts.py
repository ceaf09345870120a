"""The money's lists ask the database as often for many rows as for few."""

from decimal import Decimal

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse
from django.utils import timezone

from invoicing.domain.settling import PaymentMethod
from invoicing.models import BankEntry, BankFile, BankStatement, Invoice, Journey, MoneyRules, Reminder
from invoicing.services.note_payment import MoneyReceived, note_payment
from invoicing.services.send_invoice import send_invoice
from tests.factories import NOON, make_farm, make_house, make_prices
from tests.invoicing.issued_papers import credited, issued

FEW, MANY = 3, 12
OF_THE_OFFICE = (
    *(
        "invoice_drafts",
        "invoice_issued",
        "invoice_issue_all",
        "money_overdue",
        "payments",
        "bank",
        "bank_done",
    ),
    *(
        "outgoing_list",
        "sendings",
        "reminders",
        "mileage",
        "books",
        "invoice_list",
        "prices",
        "tax_rates",
        "period_lock",
    ),
)


def more_money(house, count):
    """Of each farm a bill that is paid in part by a booking, one overdue with its mail and reminder, one credited."""
    known = Invoice.objects.within(house.scope).count()
    statement = BankStatement.objects.create(
        business=house.business,
        file=BankFile.objects.create(
            business=house.business,
            file_name=f"{known}",
            sha256=f"{known}",
            content=b"x",
            kept_at=NOON,
            kept_by=house.office,
        ),
        form="csv",
        read_at=NOON,
        read_by=house.office,
    )
    for n in range(known, known + count):
        farm = make_farm(house.business, f"Farm {n}", by=house.owner)
        for each in range(2):
            booking = BankEntry.objects.create(
                business=house.business,
                statement=statement,
                key=f"{n}/{each}",
                booked_on=NOON,
                amount=5,
                currency="GBP",
                party_name=farm.name,
                text=f"Bill {n}",
            )
        bill = issued(farm, "20")
        money = MoneyReceived(
            farm,
            NOON.date(),
            Decimal(5),
            "GBP",
            PaymentMethod.BANK,
            {bill.pk: Decimal(3)},
            bank_entry=booking,
        )
        note_payment(money=money, at=NOON, by=house.office)
        credited(issued(farm, "20"), "20")
        send_invoice(invoice=bill, at=NOON, by=house.office, addresses=["a@example.invalid"])
        Reminder.objects.create(business=house.business, invoice=bill, step=1, proposed_at=NOON)
        Journey.objects.create(
            business=house.business,
            on=timezone.now().date(),
            van=house.van,
            distance=5,
            unit="KMT",
            noted_at=NOON,
        )
        Invoice.objects.create(
            business=house.business, farm=farm, currency="GBP", drafted_at=NOON, tax_point=NOON, payable=5
        )


def queries_for(client, name):
    with CaptureQueriesContext(connection) as asked:
        answer = client.get(reverse(name))
    assert answer.status_code == 200
    return [query["sql"] for query in asked.captured_queries]


@pytest.mark.django_db
def test_many_rows_take_as_many_queries_as_few():
    house = make_house()
    make_prices(house.business)
    MoneyRules.objects.create(business=house.business, reminder_days=[7, 21])
    client = Client()
    client.force_login(house.office)
    more_money(house, FEW)
    for name in OF_THE_OFFICE:
        client.get(reverse(name))
    few = {name: queries_for(client, name) for name in OF_THE_OFFICE}
    more_money(house, MANY)
    many = {name: queries_for(client, name) for name in OF_THE_OFFICE}
    grown = {name: many[name] for name in OF_THE_OFFICE if len(many[name]) > len(few[name])}
    assert not grown, {name: (len(few[name]), len(sql), sql[-6:]) for name, sql in grown.items()}

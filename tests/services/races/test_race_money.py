"""A draft is issued, a payment set against an invoice, an invoice paid, by several at the same moment."""

from decimal import Decimal

import pytest
from django.urls import reverse
from django.utils import timezone

from farms.models import Farm
from invoicing.domain.settling import PaymentMethod
from invoicing.models import Allocation, Invoice, Payment
from invoicing.services.issue_invoice import issue_invoice
from invoicing.services.note_payment import MoneyReceived, note_payment
from invoicing.services.use_rest import use_rest
from tests.factories import NOON
from tests.invoicing.drafts import plain_draft
from tests.invoicing.issued_papers import ISSUED_ON, issued
from tests.services.races.crowd import ROUNDS, Person, by_service, crowd, fault_of, one_wins
from trimops.accounts.roles import Role

pytestmark = pytest.mark.services
TEN = Decimal(10)


def came_in(house, shares=()):
    farm = Farm.objects.within(house.scope).select_related("business", "payer").get(pk=house.farm.pk)
    money = MoneyReceived(farm, ISSUED_ON, TEN, house.business.currency, PaymentMethod.BANK, dict(shares))
    return note_payment(money=money, at=NOON, by=house.office)


def test_a_draft_is_issued_once_and_no_number_is_left_out(house, people):
    drafts = [plain_draft(house) for _ in range(ROUNDS)]

    def hands(draft):
        at = f"/drafts/{draft.pk}/issue/"
        return [
            people[Role.OFFICE].page(reverse("invoice", args=[draft.pk])),
            Person(house.office).api("POST", at, {}, Idempotency_Key=f"office-{draft.pk}"),
            people[Role.OWNER].api("POST", at, {}, Idempotency_Key=f"owner-{draft.pk}"),
            by_service(lambda: issue_invoice(invoice=draft, at=timezone.now(), by=house.owner)),
        ]

    told = crowd([hands(draft) for draft in drafts])
    assert fault_of(told) == []
    for answers in told:
        one_wins(answers, "already_issued", "already")
    rows = Invoice.objects.within(house.scope).order_by("pk")
    assert [row.number[-4:] for row in rows] == [f"{n:04d}" for n in range(1, ROUNDS + 1)]


def test_a_rest_is_set_against_an_invoice_once(house, people):
    pairs = [(came_in(house), issued(house.farm, "10.00")) for _ in range(ROUNDS)]

    def hands(payment, bill):
        at, word = f"/payments/{payment.pk}/set-against/", [{"invoice": bill.pk, "amount": "10.00"}]
        payment.business = house.business
        return [
            people[Role.OFFICE].page(reverse("payment", args=[payment.pk]), **{f"share_{bill.pk}": "10"}),
            Person(house.office).api("POST", at, {"shares": word}, Idempotency_Key=f"office-{bill.pk}"),
            people[Role.OWNER].api("POST", at, {"shares": word}, Idempotency_Key=f"owner-{bill.pk}"),
            by_service(
                lambda: use_rest(payment=payment, shares={bill.pk: TEN}, at=timezone.now(), by=house.owner)
            ),
        ]

    told = crowd([hands(*pair) for pair in pairs])
    assert fault_of(told) == []
    for answers, (_, bill) in zip(told, pairs, strict=True):
        one_wins(answers, "cannot_settle", "open", "left", "least one")
        row = Invoice.objects.within(house.scope).get(pk=bill.pk)
        assert (row.settled, row.is_open) == (10, False)
    assert Allocation.objects.within(house.scope).count() == ROUNDS


def test_two_payments_do_not_pay_one_invoice_twice_and_the_refused_one_is_not_kept(house, people):
    bills = [issued(house.farm, "10.00") for _ in range(ROUNDS)]

    def hands(bill):
        shares = [{"invoice": bill.pk, "amount": "10.00"}]
        word = {"farm": house.farm.pk, "received_on": str(ISSUED_ON), "amount": "10.00", "method": "bank"}
        form = {"received_on": str(ISSUED_ON), "amount": "10", "method": "bank", f"share_{bill.pk}": "10"}
        sent = {**word, "shares": shares}
        return [
            people[Role.OFFICE].page(f"{reverse('payment_new')}?farm={house.farm.pk}", **form),
            Person(house.office).api("POST", "/payments/", sent, Idempotency_Key=f"office-{bill.pk}"),
            people[Role.OWNER].api("POST", "/payments/", sent, Idempotency_Key=f"owner-{bill.pk}"),
            by_service(lambda: came_in(house, {bill.pk: TEN}.items())),
        ]

    told = crowd([hands(bill) for bill in bills])
    assert fault_of(told) == []
    for answers in told:
        one_wins(answers, "cannot_settle", "open")
    assert Payment.objects.within(house.scope).count() == ROUNDS
    assert {row.settled for row in Invoice.objects.within(house.scope)} == {10}


def test_payments_that_name_two_invoices_in_either_order_never_wait_in_a_ring(house):
    pairs = [(issued(house.farm, "10.00"), issued(house.farm, "10.00")) for _ in range(ROUNDS)]
    persons = [Person(house.office) for _ in range(4)]

    def hands(bills):
        word = {"farm": house.farm.pk, "received_on": str(ISSUED_ON), "amount": "10.00", "method": "bank"}

        def pay(person, order, key):
            shares = [{"invoice": bill.pk, "amount": "5.00"} for bill in order]
            return person.api("POST", "/payments/", {**word, "shares": shares}, Idempotency_Key=key)

        first, second = bills
        orders = enumerate([(first, second), (second, first)] * 2)
        return [pay(persons[n], order, f"{first.pk}-{n}") for n, order in orders]

    told = crowd([hands(bills) for bills in pairs])
    assert fault_of(told) == []
    for answers in told:
        assert sorted(each.status for each in answers) == [201, 201, 409, 409]
    assert {row.settled for row in Invoice.objects.within(house.scope)} == {10}

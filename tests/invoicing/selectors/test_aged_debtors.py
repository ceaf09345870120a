"""Who owes how much since when; the sums are reckoned anew from the rows."""

from datetime import timedelta
from decimal import Decimal

from farms.models import Payer
from invoicing.domain.ageing import Age
from invoicing.selectors.aged_debtors import AgedDebtors, aged_debtors
from invoicing.services.pay_back import MoneyBack, PaymentMethod, pay_back
from tests.factories import MONDAY, NOON, make_farm
from tests.invoicing.issued_papers import credited, issued
from tests.invoicing.services.test_note_payment import DAY, note


def late(house, farm, amount, days):
    return issued(farm, amount, due_on=MONDAY - timedelta(days=days))


def test_each_amount_lies_in_its_band_and_the_sums_are_those_of_the_rows(house):
    second = make_farm(house.business, "High Croft", by=house.owner)
    amounts = {0: "1", 1: "2", 30: "4", 31: "8", 60: "16", 61: "32", 90: "64", 91: "128"}
    for days, amount in amounts.items():
        late(house, house.farm, amount, days)
    bill = late(house, second, "100", 40)
    note(house, "30", {bill.pk: Decimal(30)}, farm=second)
    (book,) = aged_debtors(house.scope, MONDAY)
    assert [debtor.farm_name for debtor in book.debtors] == ["Low Croft", "High Croft"]
    assert book.debtors[0].amounts == [1, 6, 24, 96, 128]
    assert book.sums == [1, 6, 94, 96, 128]
    assert (book.total, book.overdue) == (325, 324)
    assert AgedDebtors("GBP", ()).total == 0


def test_money_not_used_and_credit_not_set_off_are_shown_beside(house):
    bill = late(house, house.farm, "100", 5)
    payment = note(house, "50", {bill.pk: Decimal(20)})
    credited(bill, "7")
    pay_back(money=MoneyBack(payment, DAY, Decimal(10), PaymentMethod.CASH), at=NOON, by=house.owner)
    paid_out = credited(bill, "9")
    pay_back(money=MoneyBack(paid_out, DAY, Decimal(9), PaymentMethod.CASH), at=NOON, by=house.owner)
    second = make_farm(house.business, "High Croft", by=house.owner)
    note(house, "3", farm=second)
    (book,) = aged_debtors(house.scope, MONDAY)
    assert {debtor.farm_name: debtor.unused for debtor in book.debtors} == {"Low Croft": 27, "High Croft": 3}
    (alone,) = aged_debtors(house.scope, MONDAY, second)
    assert [debtor.farm_name for debtor in alone.debtors] == ["High Croft"]
    assert (alone.total, alone.unused) == (0, 3)


def test_currencies_apart_payers_named_and_a_settled_invoice_left_out(house):
    house.farm.payer = Payer.objects.create(business=house.business, name="The Estate")
    house.farm.save()
    late(house, house.farm, "10", 1)
    late(house, house.farm, "20", 1).save()
    euro = issued(house.farm, "30", currency="EUR", due_on=None)
    settled = issued(house.farm, "40", is_open=False, settled=40)
    euro_book, pounds = aged_debtors(house.scope, MONDAY)
    assert (euro_book.currency, euro_book.total) == ("EUR", 30)
    assert euro_book.debtors[0].ages[Age.TO_30] == 30
    assert (pounds.total, pounds.debtors[0].payer_name) == (30, "The Estate")
    assert settled.number not in ("", euro.number)


def test_the_number_of_queries_is_fixed(house, django_assert_num_queries):
    for n in range(9):
        farm = make_farm(house.business, f"Farm {n}", by=house.owner)
        late(house, farm, "10", n * 13)
    with django_assert_num_queries(2):
        assert len(aged_debtors(house.scope, MONDAY)[0].debtors) == 9

from decimal import Decimal

from invoicing.models import Invoice
from invoicing.selectors.open_invoices import open_invoices
from invoicing.selectors.payment_rest import payment_rest
from invoicing.selectors.payment_rows import PaymentFilter, parts_of, payment_rows, payment_sums, with_rests
from invoicing.selectors.settled_by import settled_by
from invoicing.services.pay_back import MoneyBack, PaymentMethod, pay_back
from tests.factories import NOON
from tests.invoicing.issued_papers import credited, issued
from tests.invoicing.services.test_note_payment import DAY, note


def test_rests_in_the_list_are_those_of_the_payments(house):
    bill = issued(house.farm, "100")
    payments = [note(house, "40", {bill.pk: Decimal(15)}), note(house, "20", {bill.pk: Decimal(20)})]
    pay_back(money=MoneyBack(payments[0], DAY, Decimal(5), PaymentMethod.BANK), at=NOON, by=house.owner)
    found = with_rests(house.scope, payment_rows(house.scope, PaymentFilter.ALL))
    rows = {row.payment.pk: row.rest for row in found}
    assert [rows[payment.pk] for payment in payments] == [20, 0]
    assert [payment_rest(payment) for payment in payments] == [20, 0]
    assert [row.pk for row in payment_rows(house.scope, PaymentFilter.WITH_REST)] == [payments[0].pk]
    assert payment_sums(payment_rows(house.scope, PaymentFilter.ALL)) == [("GBP", 55)]
    assert [part.amount for part in parts_of(payments[0])] == [15]
    assert [part.amount for part in settled_by(bill)] == [15, 20]


def test_words_of_the_address_and_of_the_search(house):
    assert PaymentFilter.of("rest") is PaymentFilter.WITH_REST
    assert PaymentFilter.of("nonsense") is PaymentFilter.ALL
    note(house, "40", reference="Cheque 77", payer_name="A. Farmer")
    for text, count in {"croft": 1, "77": 1, "farmer": 1, "zz": 0}.items():
        assert payment_rows(house.scope, PaymentFilter.ALL, text).count() == count


def test_open_papers_of_a_farm(house):
    bill = issued(house.farm, "100")
    credit = credited(bill, "30")
    note(house, "40", {bill.pk: Decimal(40)})
    assert [(row.number, row.open_amount) for row in open_invoices(house.scope, house.farm, "GBP")] == [
        (bill.number, 60)
    ]
    assert list(Invoice.objects.within(house.scope).credit_notes().filter(is_open=True)) == [credit]
    assert open_invoices(house.scope, house.farm, "EUR") == []

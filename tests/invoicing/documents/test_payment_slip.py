from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from invoicing.documents.invoice_content import Correction, HomeTax, Payment
from invoicing.documents.invoice_pdf import invoice_pdf
from invoicing.documents.payment_slip import payment_slip
from tests.invoicing.documents.paper_pictures import codes_of

EURO = Payment(
    reference="INV-2026-0042",
    terms="Please pay by 1 January 2027.",
    iban="NL91ABNA0417164300",
    bic="ABNANL2A",
    account_name="Skelderdale Klauwverzorging",
    creditor_reference="RF8820260042",
    credit_terms="No discount for early payment.",
)


def test_in_euro_it_has_account_amount_reference_and_a_code_that_says_the_same(make_invoice, text_of):
    pdf = invoice_pdf(make_invoice(currency="EUR", payment=EURO, home_tax=HomeTax("GBP", Decimal("80.12"))))
    slip = text_of(pdf).partition("How to pay")[2]
    told = "Account name Skelderdale Klauwverzorging IBAN NL91 ABNA 0417 1643 00 BIC ABNANL2A Amount €520.89"
    assert f"{told} Reference RF88 2026 0042" in slip
    assert "Please pay by 1 January 2027. No discount for early payment." in slip
    (code,) = codes_of(pdf)
    assert code.split("\n")[4:10] == [
        "ABNANL2A", "Skelderdale Klauwverzorging", "NL91ABNA0417164300", "EUR520.89", "", "RF8820260042",
    ]  # fmt: skip


def test_bank_details_that_say_more_than_the_iban_stand_below_it(make_invoice, text_of):
    details = (("IBAN", "nl91 abna 0417 1643 00"), ("Sort code", "00-00-00"))
    text = text_of(invoice_pdf(make_invoice(payment=replace(EURO, details=details))))
    assert "IBAN NL91 ABNA 0417 1643 00 BIC ABNANL2A Sort code 00-00-00 Amount" in text
    assert "nl91" not in text


def test_without_an_iban_the_number_of_the_invoice_is_the_reference(make_invoice, text_of):
    plain = replace(make_invoice().payment, creditor_reference="RF8820260042")
    text = text_of(invoice_pdf(make_invoice(payment=plain)))
    assert "Reference INV-2026-0042" in text
    assert "RF88" not in text
    bare = replace(plain, reference="")
    assert "Reference RF88 2026 0042" in text_of(invoice_pdf(make_invoice(payment=bare)))


def test_in_another_currency_there_is_no_code(make_invoice, text_of):
    pdf = invoice_pdf(make_invoice(payment=EURO))
    assert "IBAN NL91 ABNA 0417 1643 00" in text_of(pdf)
    assert codes_of(pdf) == []


def test_without_an_iban_the_plain_bank_details_stand(make_invoice, text_of):
    slip = text_of(invoice_pdf(make_invoice(currency="EUR", home_tax=HomeTax("GBP", Decimal(1))))).partition(
        "How"
    )[2]
    assert "Sort code 00-00-00 Account 00000000 Amount €520.89 Reference INV-2026-0042" in slip


@pytest.mark.parametrize(
    "changes",
    [
        {"number": None},
        {"number": "CN-1", "corrects": Correction("INV-1", date(2026, 12, 1), "twice")},
        {"paid": Decimal("620.89"), "due": Decimal(0)},
    ],
)
def test_a_draft_a_credit_note_and_a_paid_invoice_ask_for_no_money(make_invoice, text_of, changes):
    text = text_of(invoice_pdf(make_invoice(payment=EURO, **changes)))
    assert "NL91" not in text
    assert "Please pay" not in text


def test_nothing_stands_where_there_is_nothing_to_say_or_to_pay():
    assert payment_slip(Payment(), Decimal(5), "EUR", 2) == []
    assert payment_slip(EURO, Decimal(0), "EUR", 2) == []
    assert payment_slip(EURO, Decimal(-5), "EUR", 2) == []
    assert payment_slip(replace(Payment(), terms="In cash."), Decimal(5), "EUR", 2)


def test_the_account_and_the_amount_stand_in_it():
    slip = payment_slip(Payment((("Account", "0"),)), Decimal(5), "GBP", 2)
    facts = slip[2]._cellvalues[0][0]._cellvalues
    assert [[cell.getPlainText() for cell in row] for row in facts] == [
        ["Account", "0"],
        ["Amount", "£5.00"],
    ]

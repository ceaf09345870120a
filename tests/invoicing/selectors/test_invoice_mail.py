from datetime import date
from decimal import Decimal

from invoicing.selectors.invoice_mail import invoice_mail
from tests.invoicing.issued_row import issued_row


def test_an_invoice_says_what_is_to_be_paid_by_when_and_with_which_reference(house):
    mail = invoice_mail(issued_row(house, gross="1120.50"))
    assert mail.subject == "Invoice INV-2026-0001 from Ash & Rye Foot Trimming: £1,120.50, due 1 Apr 2026"
    assert mail.body == (
        "The Estate of Low Croft,\n\n"
        "our invoice INV-2026-0001 for the work at Low Croft on 2 Mar 2026 is attached.\n\n"
        "To pay: £1,120.50 by 1 Apr 2026, with the reference RF18539007547034.\n\n"
        "If something on it is not right, ring 01632 960 001, or answer this mail.\n\n"
        "Ash & Rye Foot Trimming"
    )
    assert (mail.with_xml, mail.no_xml_because) == (False, "")


def test_a_months_invoice_names_its_days(house):
    period = {"period_from": date(2026, 2, 1), "period_until": date(2026, 2, 27)}
    body = invoice_mail(issued_row(house, **period)).body
    assert "for the work at Low Croft from 1 Feb to 27 Feb 2026" in body


def test_an_invoice_that_was_paid_before_asks_for_nothing(house):
    invoice = issued_row(house, payable=Decimal(0), prepaid=Decimal(120))
    assert "There is nothing left to pay on it." in invoice_mail(invoice).body


def test_sent_once_more_it_asks_for_what_is_left(house):
    invoice = issued_row(house, settled=Decimal(20))
    assert "To pay: £100.00 of £120.00 by 1 Apr 2026, with" in invoice_mail(invoice).body
    invoice.settled = Decimal(120)
    assert "It is paid: thank you." in invoice_mail(invoice).body


def test_a_credit_note_says_on_which_invoice_and_why(house):
    first = issued_row(house)
    note = issued_row(
        house, "CN-2026-0001", gross="12", kind="credit_note", corrects=first, reason="Two cows too many"
    )
    mail = invoice_mail(note)
    assert mail.subject == ("Credit note CN-2026-0001 on invoice INV-2026-0001 from Ash & Rye Foot Trimming")
    assert "on invoice INV-2026-0001 is attached: £12.00.\n\nWhy: Two cows too many" in mail.body
    assert "To pay" not in mail.body


def test_without_xml_it_says_why(house):
    mail = invoice_mail(issued_row(house, has_xml=False))
    assert (mail.with_xml, mail.no_xml_because) == (False, "The currency has three decimals.")

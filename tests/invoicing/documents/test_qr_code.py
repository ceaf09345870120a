"""The QR code of a credit transfer, drawn on a page and read back from its picture by zxing-cpp.

Lines of the code after EPC069-12 (version 002), as segno 1.6 documents them: service tag, version, character set (1 is
UTF-8), "SCT", BIC, name, IBAN, amount, purpose, structured reference, text.
"""

from dataclasses import replace
from decimal import Decimal

import pytest

from invoicing.documents.invoice_content import Payment
from invoicing.documents.qr_code import dark_runs, transfer_qr
from tests.invoicing.documents.paper_pictures import codes_of
from trimops.paper.sheet import SheetInfo, build_sheet

# The IBAN is the check value of ../shared/checkdata/finance_checks.json; RF88... as in standards-facts, section 5.
PAYMENT = Payment(
    reference="INV-2026-0042",
    iban="NL91 ABNA 0417 1643 00",
    bic="ABNANL2A",
    account_name="Łukasz Ærø & Zoë Müller-Brändli",
    creditor_reference="RF88 20260042",
)


def read(payment, amount, made_at):
    info = SheetInfo("t", "a", "s", made_at, "f")
    return codes_of(build_sheet([transfer_qr(payment, Decimal(amount), 85)], info))


@pytest.mark.parametrize(
    ("amount", "told"), [("0.01", "0.01"), ("771.49", "771.49"), ("999999999.99", "999999999.99")]
)
def test_a_reader_finds_what_was_put_in(make_invoice, amount, told):
    (code,) = read(PAYMENT, amount, make_invoice().made_at)
    assert code.split("\n") == [
        "BCD", "002", "1", "SCT", "ABNANL2A", "Łukasz Ærø & Zoë Müller-Brändli", "NL91ABNA0417164300", f"EUR{told}",
        "", "RF8820260042",
    ]  # fmt: skip


def test_without_a_structured_reference_the_number_goes_as_text(make_invoice):
    (code,) = read(replace(PAYMENT, creditor_reference="", bic=""), "100", make_invoice().made_at)
    assert code.split("\n")[4:] == [
        "", "Łukasz Ærø & Zoë Müller-Brändli", "NL91ABNA0417164300", "EUR100", "", "", "INV-2026-0042",
    ]  # fmt: skip


def test_a_name_too_long_for_it_is_cut_at_seventy(make_invoice):
    (code,) = read(replace(PAYMENT, account_name="Partner " * 20), "1", make_invoice().made_at)
    assert code.split("\n")[5] == ("Partner " * 20)[:70].rstrip()


@pytest.mark.parametrize(
    ("payment", "amount"),
    [
        (PAYMENT, "0"),
        (PAYMENT, "-1"),
        (PAYMENT, "1000000000"),
        (replace(PAYMENT, iban=""), "1"),
        (replace(PAYMENT, account_name=" "), "1"),
        (replace(PAYMENT, creditor_reference="", reference=""), "1"),
    ],
)
def test_what_the_guidelines_cannot_say_has_no_code(payment, amount):
    assert transfer_qr(payment, Decimal(amount), 85) is None


def test_dark_squares_side_by_side_are_one():
    assert list(dark_runs([1, 1, 0, 1, 0, 0, 1, 1, 1])) == [(0, 2), (3, 1), (6, 3)]
    assert list(dark_runs([0, 0])) == []

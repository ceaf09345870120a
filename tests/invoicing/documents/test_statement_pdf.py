from dataclasses import replace
from datetime import date, datetime
from decimal import Decimal
from io import BytesIO
from zoneinfo import ZoneInfo

import pytest
from pypdf import PdfReader

from invoicing.documents.invoice_content import Party, Payment
from invoicing.documents.logo import LogoUnreadable
from invoicing.documents.statement_content import Ageing, StatementContent, StatementLine
from invoicing.documents.statement_pdf import statement_pdf, statement_title
from tests.invoicing.documents.paper_pictures import faces_not_inside

ZERO = Decimal(0)
INVOICE, CREDIT = "INV-2026-0042", "CN-2026-0001"
DAYS = date(2026, 11, 3), date(2026, 11, 9), date(2026, 11, 20)
LINES = (
    StatementLine(DAYS[0], "Invoice", INVOICE, Decimal("412.80"), ZERO, Decimal("532.80"), date(2026, 12, 3)),
    StatementLine(DAYS[1], "Payment", "Bank transfer", ZERO, Decimal("500.00"), Decimal("32.80")),
    StatementLine(DAYS[2], "Credit note", CREDIT, ZERO, Decimal("14.25"), Decimal("18.55")),
)
CONTENT = StatementContent(
    business=Party("Skelderdale Foot Trimming", ("2 Mill Lane", "SK0 0AA"), "GB000000000"),
    party=Party("J. Marsden & Daughters", ("High Thornbeck",)),
    farm_name="Low Thornbeck",
    first=date(2026, 11, 1),
    last=date(2026, 11, 30),
    made_at=datetime(2026, 12, 2, 9, tzinfo=ZoneInfo("Europe/London")),
    currency="GBP",
    digits=2,
    opening=Decimal("120.00"),
    lines=LINES,
    closing=Decimal("18.55"),
    ageing=Ageing(Decimal("12.05"), Decimal("10.00"), ZERO, ZERO, ZERO, Decimal("3.50")),
    payment=Payment((("Account", "00000000"),), "High Thornbeck", "Please pay by 3 December."),
    note="Thank you.",
)


def test_each_line_stands_with_the_balance_after_it(text_of):
    text = text_of(statement_pdf(CONTENT))
    for told in (
        "1 Nov 2026 Balance before 120.00",
        "3 Nov 2026 Invoice INV-2026-0042 3 Dec 2026 412.80 532.80",
        "9 Nov 2026 Payment Bank transfer 500.00 32.80",
        "20 Nov 2026 Credit note CN-2026-0001 14.25 18.55",
        "30 Nov 2026 Balance 18.55",
    ):
        assert told in text


def test_who_to_whom_for_which_farm_and_days(text_of):
    text = text_of(statement_pdf(CONTENT))
    for told in (
        "Skelderdale Foot Trimming",
        "Statement of account £18.55 open on 30 Nov 2026",
        "To J. Marsden & Daughters",
        "Farm Low Thornbeck",
        "From and to 1 Nov 2026 to 30 Nov 2026",
        "Drawn up on 2 December 2026",
        "Thank you.",
    ):
        assert told in text


@pytest.mark.parametrize(
    ("closing", "title"),
    [
        ("18.55", "£18.55 open on 30 Nov 2026"),
        ("0", "Nothing is open on 30 Nov 2026"),
        ("-7", "£7.00 to your good on 30 Nov 2026"),
    ],
)
def test_the_title_is_the_answer(closing, title):
    assert statement_title(replace(CONTENT, closing=Decimal(closing))) == title


def test_what_is_open_is_to_be_paid_and_the_terms_of_an_invoice_are_not_repeated(text_of):
    text = text_of(statement_pdf(CONTENT))
    assert "How to pay Account 00000000 Amount £18.55 Reference High Thornbeck" in text
    assert "Please pay by" not in text


def test_who_owes_nothing_is_not_asked_to_pay(text_of):
    paid = StatementLine(date(2026, 11, 21), "Payment", "Cash", ZERO, Decimal("18.55"), ZERO)
    settled = replace(CONTENT, lines=(*LINES, paid), closing=ZERO)
    assert "How to pay" not in text_of(statement_pdf(settled))


@pytest.mark.parametrize(
    "changes", [{"closing": Decimal("18.54")}, {"opening": Decimal("120.01")}, {"lines": LINES[:2]}]
)
def test_balances_that_do_not_follow_are_not_printed(changes):
    with pytest.raises(ValueError, match="balance"):
        statement_pdf(replace(CONTENT, **changes))


def test_a_bad_logo_is_refused():
    with pytest.raises(LogoUnreadable):
        statement_pdf(replace(CONTENT, logo=b"none"))


def test_the_same_content_gives_the_same_bytes_with_all_faces_inside():
    pdf = statement_pdf(CONTENT)
    assert pdf == statement_pdf(CONTENT)
    assert faces_not_inside(pdf) == []
    assert PdfReader(BytesIO(pdf)).metadata.subject == "Statement of account of J. Marsden & Daughters"

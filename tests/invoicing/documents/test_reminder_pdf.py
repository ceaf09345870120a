from dataclasses import replace
from datetime import date, datetime
from decimal import Decimal
from io import BytesIO
from zoneinfo import ZoneInfo

import pytest
from pypdf import PdfReader

from invoicing.documents.invoice_content import Party, Payment
from invoicing.documents.logo import LogoUnreadable
from invoicing.documents.reminder_content import InterestClaim, InterestSpan, ReminderContent
from invoicing.documents.reminder_pdf import reminder_pdf
from tests.invoicing.documents.paper_pictures import faces_not_inside

CONTENT = ReminderContent(
    step=1,
    day=date(2027, 2, 20),
    made_at=datetime(2027, 2, 20, 12, tzinfo=ZoneInfo("Europe/London")),
    business=Party(
        "Skelderdale Foot Trimming", ("2 Mill Lane",), "GB000000000", "01632 960 001", "o@skelderdale.example"
    ),
    party=Party("J. Marsden & Daughters", ("High Thornbeck",)),
    farm_name="Low Thornbeck",
    number="INV-2026-0042",
    issued_on=date(2026, 12, 2),
    due_on=date(2027, 1, 1),
    gross=Decimal("520.89"),
    settled=Decimal("100.00"),
    open_amount=Decimal("420.89"),
    total=Decimal("420.89"),
    currency="GBP",
    digits=2,
    payment=Payment((("Account", "00000000"),), "INV-2026-0042", "Please pay by 1 January 2027."),
    ask="Mo",
)
CLAIM = InterestClaim(
    (
        InterestSpan(date(2027, 1, 2), date(2027, 1, 31), 30, Decimal("520.89"), Decimal("12.25"), Decimal("5.24457")),
        InterestSpan(date(2027, 2, 1), date(2027, 2, 20), 20, Decimal("420.89"), Decimal("12.25"), Decimal("2.82516")),
    ),
    Decimal("8.07"),
    "Open amount × rate / 100 × days / 365.",
    "Reference rate: the bank’s page, invented.",
)  # fmt: skip
WITH_INTEREST = replace(
    CONTENT,
    step=3,
    interest=CLAIM,
    fixed_sum=Decimal("40.00"),
    fixed_sum_source="for a debt below £1,000.00.",
    total=Decimal("468.96"),
)


def test_it_names_the_invoice_its_days_and_what_is_open(text_of):
    text = text_of(reminder_pdf(CONTENT))
    for told in (
        "Reminder Invoice INV-2026-0042: £420.89 due since 1 Jan 2027",
        "Invoice number INV-2026-0042 Date of invoice 2 December 2026 Date of this letter 20 February 2027",
        "Due 1 January 2027 Farm Low Thornbeck",
        "Invoice INV-2026-0042 of 2 Dec 2026 £520.89 Paid or credited −£100.00 Still open £420.89 To pay £420.89",
        "If you have paid already, thank you",
        "Account 00000000 Amount £420.89 Reference INV-2026-0042",
        "Questions? Please ring Mo on 01632 960 001 or write to o@skelderdale.example.",
    ):
        assert told in text


def test_without_interest_none_is_named_nor_the_day_that_has_passed(text_of):
    text = text_of(reminder_pdf(CONTENT))
    assert "nterest" not in text
    assert "Please pay by 1 January 2027" not in text


def test_interest_is_shown_with_its_working(text_of):
    text = text_of(reminder_pdf(WITH_INTEREST))
    for told in (
        "Third reminder",
        "Still open £420.89 Interest up to 20 Feb 2027 £8.07 Fixed sum for late payment £40.00 To pay £468.96",
        "2 Jan 2027 31 Jan 2027 30 520.89 12.25 % 5.2446",
        "1 Feb 2027 20 Feb 2027 20 420.89 12.25 % 2.8252",
        "Open amount × rate / 100 × days / 365.",
        "Reference rate: the bank’s page, invented.",
        "Fixed sum: for a debt below £1,000.00.",
        "Amount £468.96",
    ):
        assert told in text


def test_an_invoice_of_which_nothing_was_paid_is_told_once(text_of):
    whole = replace(CONTENT, settled=Decimal(0), open_amount=CONTENT.gross, total=CONTENT.gross)
    assert "of 2 Dec 2026 £520.89 To pay £520.89" in text_of(reminder_pdf(whole))


@pytest.mark.parametrize("field", ["total", "open_amount", "gross", "settled", "fixed_sum"])
def test_sums_that_do_not_add_up_are_not_printed(field):
    wrong = replace(WITH_INTEREST, **{field: getattr(WITH_INTEREST, field) + Decimal("0.01")})
    with pytest.raises(ValueError, match="is not"):
        reminder_pdf(wrong)


def test_a_bad_logo_is_refused():
    with pytest.raises(LogoUnreadable):
        reminder_pdf(replace(CONTENT, logo=b"none"))


def test_the_same_content_gives_the_same_bytes_with_all_faces_inside():
    pdf = reminder_pdf(WITH_INTEREST)
    assert pdf == reminder_pdf(WITH_INTEREST)
    assert faces_not_inside(pdf) == []
    reader = PdfReader(BytesIO(pdf))
    assert len(reader.pages) == 1
    assert reader.metadata.subject == "Third reminder of invoice INV-2026-0042 to J. Marsden & Daughters"

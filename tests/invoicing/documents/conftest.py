"""An invented invoice: three rates of tax so that each way of standing on paper is seen."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, datetime
from decimal import Decimal
from io import BytesIO
from zoneinfo import ZoneInfo

import pytest
from pypdf import PdfReader

from invoicing.documents.invoice_content import InvoiceLine, InvoicePaper, Party, Payment, TaxRow

LONDON = ZoneInfo("Europe/London")
SELLER = Party(
    "Skelderdale Foot Trimming",
    ("2 Mill Lane", "Skelder", "SK0 0AA"),
    "GB000000000",
    "01632 960 001",
    "office@skelderdale.example",
)
BUYER = Party("J. Marsden & Daughters", ("High Thornbeck", "Thornbeck", "SK0 0AB"))
S, E, TWENTY, NONE = "S", "E", Decimal(20), Decimal(0)
LINES = (
    InvoiceLine(
        "Functional trim",
        Decimal(17),
        "C62",
        Decimal("11.50"),
        S,
        TWENTY,
        Decimal("195.50"),
        "17 cows, all feet",
    ),
    InvoiceLine("Corrective trim", Decimal(13), "C62", Decimal("16.00"), S, TWENTY, Decimal("208.00")),
    InvoiceLine(
        "Block", Decimal(3), "C62", Decimal("14.25"), S, TWENTY, Decimal("42.75"), "cows 400, 412, 424"
    ),
    InvoiceLine("Travel", Decimal("46.5"), "KMT", Decimal("0.455"), S, TWENTY, Decimal("21.16")),
    InvoiceLine("Training of farm staff", Decimal(1), "C62", Decimal("60.00"), E, NONE, Decimal("60.00")),
)


@pytest.fixture
def make_invoice() -> Callable[..., InvoicePaper]:
    """The invoice; any field may be replaced by name."""

    def make(**changes: object) -> InvoicePaper:
        paper = InvoicePaper(
            number="INV-2026-0042",
            issue_date=date(2026, 12, 2),
            tax_point=date(2026, 12, 1),
            due_date=date(2027, 1, 1),
            made_at=datetime(2026, 12, 2, 9, tzinfo=LONDON),
            seller=SELLER,
            buyer=BUYER,
            lines=LINES,
            tax_rows=(
                TaxRow(S, TWENTY, Decimal("467.41"), Decimal("93.48")),
                TaxRow(E, NONE, Decimal("60.00"), Decimal("0.00"), "Exempt: text handed in by the business."),
            ),
            net=Decimal("527.41"),
            tax=Decimal("93.48"),
            gross=Decimal("620.89"),
            paid=Decimal("100.00"),
            due=Decimal("520.89"),
            payment=Payment(
                (
                    ("Account name", "Skelderdale Foot Trimming"),
                    ("Sort code", "00-00-00"),
                    ("Account", "00000000"),
                ),
                "INV-2026-0042",
                "Due 30 days after issue. Late payment: interest by law.",
            ),
            cash_discount="No discount for early payment.",
            notes=("Thank you. Visit of 1 December 2026, report V-0142.",),
        )
        return replace(paper, **changes)  # type: ignore[arg-type]

    return make


@pytest.fixture
def text_of() -> Callable[[bytes], str]:
    """All text of a PDF, read by pypdf, white space run together."""

    def read(pdf: bytes) -> str:
        return " ".join(" ".join(page.extract_text() for page in PdfReader(BytesIO(pdf)).pages).split())

    return read


@pytest.fixture
def electronic(make_invoice: Callable[..., InvoicePaper]) -> Callable[..., InvoicePaper]:
    """The invoice with all that an e-invoice asks for; any field may be replaced by name."""

    def make(**changes: object) -> InvoicePaper:
        seller = replace(SELLER, tax_number="GB980780684", country="GB")
        buyer = replace(BUYER, tax_number="IE6433435F", country="IE")
        return make_invoice(**{"seller": seller, "buyer": buyer} | changes)

    return make

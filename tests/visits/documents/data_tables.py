"""A table of everything that is hard to write down, for CSV and spreadsheet alike."""

from datetime import date
from decimal import Decimal

from visits.documents.data_table import DataTable

HARD_TEXTS = (
    "=HYPERLINK(1)",
    "+44 1632 960000",
    "-1",
    "@SUM(A1)",
    "'quoted",
    "''twice",
    "\t=1",
    'Says "no", twice',
    "Two\nlines",
    "a <b> & c",
    " blanks at both ends ",
    "with\r\na return",
    "Ærø ✂ 牛",
    "0012",
    "2026-03-02",
    "101",
)
TABLE = DataTable(
    "hard cases",
    "What goes wrong elsewhere.",
    ("Text", "Number", "Share", "Day"),
    [
        *((text, number, Decimal("2.5"), date(2026, 3, 2)) for number, text in enumerate(HARD_TEXTS)),
        (None, None, None, None),
        ("plain", -3, Decimal("-0.25"), date(1999, 12, 31)),
    ],
)

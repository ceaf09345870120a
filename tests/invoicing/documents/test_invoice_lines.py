from dataclasses import replace
from decimal import Decimal
from io import BytesIO

import pypdfium2
import pytest

from invoicing.documents.invoice_lines import rate_words
from invoicing.documents.invoice_pdf import invoice_pdf


def right_edges(pdf: bytes, wanted: list[str]) -> dict[str, float]:
    """Where words end, in points from the left."""
    text = pypdfium2.PdfDocument(BytesIO(pdf))[0].get_textpage()
    found: dict[str, float] = {}
    for index in range(text.count_rects()):
        box = text.get_rect(index)
        words = text.get_text_bounded(*box).strip()
        if words in wanted:
            found.setdefault(words, box[2])
    return found


def test_net_amounts_end_under_each_other(make_invoice):
    edges = right_edges(invoice_pdf(make_invoice()), ["195.50", "208.00", "42.75", "21.16"])
    assert len(edges) == 4
    assert max(edges.values()) - min(edges.values()) < 1


def test_decimal_points_of_unit_prices_stand_under_each_other(make_invoice):
    edges = right_edges(invoice_pdf(make_invoice()), ["11.50", "14.25", "0.455"])
    digit = 0.632 * 9.5
    assert edges["0.455"] - edges["11.50"] == pytest.approx(digit, abs=1)
    assert edges["14.25"] == pytest.approx(edges["11.50"], abs=1)


def test_a_line_is_told_with_why_quantity_unit_price_rate_and_net(make_invoice, text_of):
    text = text_of(invoice_pdf(make_invoice()))
    assert "Functional trim 17 cows, all feet 17 11.50 20 % 195.50" in text
    assert "Travel 46.5 km 0.455 20 % 21.16" in text
    assert "Training of farm staff 1 60.00 exempt 60.00" in text


@pytest.mark.parametrize(
    ("category", "words"),
    [("S", "5 %"), ("Z", "5 %"), ("E", "exempt"), ("AE", "reverse charge"), ("O", "none")],
)
def test_a_category_without_a_rate_is_told_in_words(category, words):
    assert rate_words(category, "5 %") == words


def test_many_lines_run_over_pages_with_their_head(make_invoice):
    paper = make_invoice()
    lines = tuple(replace(paper.lines[1], description=f"line {i}", net=Decimal(1)) for i in range(90))
    rows = (replace(paper.tax_rows[0], taxable=Decimal(90), tax=Decimal(18)),)
    sums = {
        "net": Decimal(90),
        "tax": Decimal(18),
        "gross": Decimal(108),
        "paid": Decimal(0),
        "due": Decimal(108),
    }
    pages = pypdfium2.PdfDocument(invoice_pdf(replace(paper, lines=lines, tax_rows=rows, **sums)))
    texts = [page.get_textpage().get_text_bounded() for page in pages]
    assert len(texts) > 2
    assert all("Quantity" in text for text in texts if "line " in text)

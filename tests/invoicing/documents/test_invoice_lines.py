from dataclasses import replace
from datetime import date
from decimal import Decimal
from io import BytesIO

import pypdfium2
import pytest

from invoicing.documents.invoice_content import InvoiceLine, TaxRow
from invoicing.documents.invoice_lines import rate_words
from invoicing.documents.invoice_pdf import invoice_pdf
from tests.invoicing.documents.paper_pictures import page_texts


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
    lines = tuple(
        replace(
            paper.lines[1],
            description=f"line {i}",
            quantity=Decimal(1),
            unit_price=Decimal(1),
            net=Decimal(1),
        )
        for i in range(90)
    )
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


def all_at_one(paper, lines):
    """The paper with these lines at 20 %, its sums made anew."""
    net = sum((line.net for line in lines), Decimal(0))
    tax = (net / 5).quantize(Decimal("0.01"))
    row = replace(paper.tax_rows[0], taxable=net, tax=tax)
    sums = {"net": net, "tax": tax, "gross": net + tax, "paid": Decimal(0), "due": net + tax}
    return replace(paper, lines=tuple(lines), tax_rows=(row,), **sums)


def test_a_discount_on_a_line_is_told_with_rate_and_reason_and_taken_off(make_invoice, text_of):
    """VAT Regulations 1995, reg 14(1): the rate of a discount; Directive 2006/112/EC, art. 226 (8): reductions."""
    paper = make_invoice()
    cut = replace(
        paper.lines[0],
        allowance=Decimal("19.55"),
        allowance_percent=Decimal("10.0000"),
        allowance_reason="agreed for 2026",
        net=Decimal("175.95"),
    )
    text = text_of(invoice_pdf(all_at_one(paper, [cut, paper.lines[1]])))
    assert "Discount GBP" in text
    assert (
        "Functional trim Discount 10 %: agreed for 2026 17 cows, all feet 17 11.50 −19.55 20 % 175.95" in text
    )
    assert "Discount" not in text_of(invoice_pdf(paper))


def test_work_of_several_days_stands_by_day_with_its_sum(make_invoice, text_of):
    paper = make_invoice()
    first, second = date(2026, 11, 3), date(2026, 11, 24)
    lines = [replace(line, done_on=first) for line in paper.lines[:2]]
    lines += [replace(line, done_on=second) for line in paper.lines[2:4]]
    text = text_of(invoice_pdf(all_at_one(paper, lines)))
    assert "Tuesday 3 November 2026: 403.50 Functional trim" in text
    assert "208.00 Tuesday 24 November 2026: 63.91 Block" in text
    assert "Work done 3 Nov 2026 to 24 Nov 2026" in text


def test_lines_of_no_one_day_are_not_taken_for_those_of_the_day_above(make_invoice, text_of):
    paper = make_invoice()
    days = (date(2026, 11, 3), date(2026, 11, 24), None, date(2026, 11, 24))
    lines = [replace(line, done_on=day) for line, day in zip(paper.lines, days, strict=False)]
    text = text_of(invoice_pdf(all_at_one(paper, lines)))
    assert "Tuesday 24 November 2026: 208.00 Corrective trim" in text
    assert "Besides: 42.75 Block" in text
    assert "Tuesday 24 November 2026: 21.16 Travel" in text


def test_one_day_needs_no_heading(make_invoice, text_of):
    paper = make_invoice()
    lines = [replace(line, done_on=paper.tax_point) for line in paper.lines[:2]]
    text = text_of(invoice_pdf(all_at_one(paper, lines)))
    assert "Tuesday" not in text
    assert "Work done" not in text


def test_sixty_lines_take_two_pages_and_carry_their_sum_over(make_invoice):
    paper = make_invoice()
    one = replace(paper.lines[1], quantity=Decimal(1), net=Decimal("16.00"), why="left hind")
    pdf = invoice_pdf(all_at_one(paper, [replace(one, description=f"Cow {400 + i}") for i in range(60)]))
    first, second = page_texts(pdf)
    shown = first.count("Cow ")
    assert shown + second.count("Cow ") == 60
    carried = f"{16 * shown}.00"
    assert f"Carried over {carried}" in first
    assert f"Brought forward {carried}" in second
    assert "Carried over" not in second


def test_without_units_there_is_no_column_for_them(make_invoice, text_of):
    paper = make_invoice()
    assert "Quantity Unit price" in text_of(invoice_pdf(all_at_one(paper, paper.lines[:2])))


def test_large_amounts_do_not_run_into_each_other(make_invoice):
    paper = make_invoice()
    dear = replace(
        paper.lines[0], quantity=Decimal(1000), unit_price=Decimal("1234567.89"), net=Decimal("1234567890.00")
    )
    wanted = ["1,000", "1,234,567.89", "20 %", "1,234,567,890.00"]
    edges = right_edges(invoice_pdf(all_at_one(paper, [dear])), wanted)
    assert sorted(edges) == sorted(wanted)


def test_much_that_stands_under_the_lines_is_told_in_one_line_each(make_invoice, text_of):
    """A month of visits takes two pages; the visits' reports name every cow."""
    cows = "30 noted at the crush: " + ", ".join(str(number) for number in range(101, 131))
    line = InvoiceLine("Functional trim", Decimal(1), "C62", Decimal(1), "S", Decimal(20), Decimal(1), cows)

    def paper(many: int) -> bytes:
        lines = tuple(replace(line, done_on=date(2026, 11, 2 + place // 4)) for place in range(many))
        net, tax = Decimal(many), Decimal(many) / 5
        rows = (TaxRow("S", Decimal(20), net, tax),)
        sums = {"net": net, "tax": tax, "gross": net + tax, "paid": Decimal(0), "due": net + tax}
        return invoice_pdf(make_invoice(lines=lines, tax_rows=rows, **sums))

    month = paper(21)
    assert len(pypdfium2.PdfDocument(month)) == 2
    assert "30 noted at the crush: 101, 102, 103, 104, 105 …" in text_of(month)
    assert cows in text_of(paper(1))

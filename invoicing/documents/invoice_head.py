"""The head of an invoice: what it is and comes to, who to whom, and its dates."""

from reportlab.platypus import Flowable

from invoicing.documents.invoice_content import InvoicePaper
from invoicing.documents.paper_head import Fact, from_and_to, paper_head, to_and_facts
from trimops.paper.days import day_plain, day_short_year
from trimops.paper.figures import money
from trimops.paper.styles import style, words


def invoice_title(paper: InvoicePaper) -> str:
    """The answer first: "Invoice INV-2026-0042: £412.80 to pay by 31 Dec 2026"."""
    due = money(paper.due, paper.currency, paper.digits)
    if paper.number is None:
        return f"Draft {paper.kind.lower()}: {due}, not yet sent"
    if paper.corrects:
        return f"Credit note {paper.number}: {due} for invoice {paper.corrects.invoice_number}"
    if not paper.due:
        return f"Invoice {paper.number}: {'paid' if paper.gross else 'nothing to pay'}"
    if paper.due < 0:
        return f"Invoice {paper.number}: {money(-paper.due, paper.currency, paper.digits)} to your good"
    return f"Invoice {paper.number}: {due} to pay{f' by {day_short_year(paper.due_date)}' if paper.due_date else ''}"


def invoice_head(paper: InvoicePaper) -> list[Flowable]:
    """Letterhead, title, buyer and dates; a credit note also says what it corrects and why."""
    mark = paper.kind if paper.number else f"{paper.kind}: draft, not a tax document"
    seller, buyer = from_and_to(paper.seller, paper.buyer)
    return [
        *paper_head(seller, paper.tax_name, mark, invoice_title(paper), paper.logo),
        *to_and_facts(buyer, paper.tax_name, _facts(paper)),
        *_correction(paper),
    ]


def _correction(paper: InvoicePaper) -> list[Flowable]:
    if paper.corrects is None:
        return []
    invoice = f"invoice {paper.corrects.invoice_number} of {day_plain(paper.corrects.invoice_date)}"
    return [words(f"It corrects {invoice}: {paper.corrects.reason}", style(after=8))]


def _facts(paper: InvoicePaper) -> list[Fact]:
    facts = [
        (f"{paper.kind} number", paper.number or "none yet"),
        ("Date of issue", day_plain(paper.issue_date) if paper.number else "not yet"),
        (_tax_point_label(paper), day_plain(paper.tax_point)),
        ("Work done", _work_done(paper)),
        ("Due", day_plain(paper.due_date) if paper.due_date and not paper.corrects else ""),
        ("Your order number", paper.order_number),
        ("Your reference", paper.buyer_reference),
    ]
    return [(name, value) for name, value in facts if value]


def _tax_point_label(paper: InvoicePaper) -> str:
    """Of a credit note, and where it was moved, the tax point is not the day of the work."""
    return "Tax point (date of supply)" if paper.tax_point == paper.supplied_on else "Tax point"


def _work_done(paper: InvoicePaper) -> str:
    """Empty where the tax point says it already."""
    days = {line.done_on for line in paper.lines if line.done_on}
    first, last = paper.period or (min(days, default=None), max(days, default=None))
    if first is None or last is None or first == last == paper.tax_point:
        return ""
    return day_plain(first) if first == last else f"{day_short_year(first)} to {day_short_year(last)}"

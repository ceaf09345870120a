"""The head of an invoice: what it is and comes to, who to whom, and its dates."""

from collections.abc import Iterable

from reportlab.platypus import Flowable, Paragraph, Spacer

from invoicing.documents.invoice_content import InvoicePaper, Party
from trimops.paper.colours import Tint
from trimops.paper.days import day_plain, day_short_year
from trimops.paper.figures import money
from trimops.paper.letterhead import Letterhead, letterhead_block
from trimops.paper.sheet import TEXT_WIDTH
from trimops.paper.side_by_side import side_by_side
from trimops.paper.styles import SMALL, TITLE, style, words


def invoice_title(paper: InvoicePaper) -> str:
    """The answer first: "Invoice INV-2026-0042: £412.80 to pay by 31 Dec 2026"."""
    due = money(paper.due, paper.currency, paper.digits)
    if paper.number is None:
        return f"Draft {paper.kind.lower()}: {due}, not yet sent"
    if paper.corrects:
        return f"Credit note {paper.number}: {due} for invoice {paper.corrects.invoice_number}"
    if not paper.due:
        return f"Invoice {paper.number}: paid"
    return f"Invoice {paper.number}: {due} to pay{f' by {day_short_year(paper.due_date)}' if paper.due_date else ''}"


def invoice_head(paper: InvoicePaper) -> list[Flowable]:
    """Letterhead, title, buyer and dates; a credit note also says what it corrects and why."""
    seller = paper.seller
    mark = paper.kind if paper.number else f"{paper.kind}: draft, not a tax document"
    letterhead = Letterhead(seller.name, seller.address, seller.phone, seller.email)
    parts: list[Flowable] = [
        letterhead_block(letterhead, mark),
        words(invoice_title(paper), style(TITLE, bold=True, after=6)),
        *side_by_side([_buyer(paper), _seller(paper), _dates(paper)], TEXT_WIDTH),
        Spacer(0, 12),
    ]
    if paper.corrects:
        on = (
            f"It corrects invoice {paper.corrects.invoice_number} of {day_plain(paper.corrects.invoice_date)}"
        )
        parts.append(words(f"{on}: {paper.corrects.reason}", style(after=8)))
    return parts


def _buyer(paper: InvoicePaper) -> list[Paragraph]:
    return [_label("To"), *_party(paper.buyer, paper.tax_name)]


def _seller(paper: InvoicePaper) -> list[Paragraph]:
    return [_label("From"), *_party(paper.seller, paper.tax_name)]


def _party(party: Party, tax_name: str) -> list[Paragraph]:
    number = [f"{tax_name} number {party.tax_number}"] if party.tax_number else []
    lines = [words(line) for line in (*party.address, *number, *party.more)]
    return [words(party.name, style(bold=True)), *lines]


def _dates(paper: InvoicePaper) -> list[Paragraph]:
    facts = [
        (f"{paper.kind} number", paper.number or "none yet"),
        ("Date of issue", day_plain(paper.issue_date)),
        ("Tax point (date of supply)", day_plain(paper.tax_point)),
    ]
    if paper.due_date and not paper.corrects:
        facts.append(("Due", day_plain(paper.due_date)))
    return list(_facts(facts))


def _facts(facts: Iterable[tuple[str, str]]) -> Iterable[Paragraph]:
    for label, value in facts:
        yield _label(label)
        yield words(value, style(after=3))


def _label(text: str) -> Paragraph:
    return words(text, style(SMALL, bold=True, tint=Tint.QUIET))

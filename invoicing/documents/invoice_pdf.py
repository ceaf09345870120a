"""An invoice, a draft of one, or a credit note as PDF. What is on paper is what was handed in, to the penny."""

from reportlab.platypus import Flowable

from invoicing.documents.invoice_check import check_invoice
from invoicing.documents.invoice_content import InvoicePaper
from invoicing.documents.invoice_head import invoice_head, invoice_title
from invoicing.documents.invoice_lines import lines_table
from invoicing.documents.invoice_totals import notes_part, totals_part
from invoicing.documents.payment_slip import payment_slip
from trimops.paper.footing import footing
from trimops.paper.sheet import SheetInfo, build_sheet


def invoice_pdf(paper: InvoicePaper, *, packed: bool = True) -> bytes:
    """The PDF; the same paper gives the same bytes. A draft has DRAFT across each page. `packed`: see `build_sheet`.

    Raises InvoiceIncomplete (a RuleBroken) when figures do not add up or a number was given and something the law
    wants on an invoice is missing, LogoUnreadable when its logo is no picture; ValueError if `made_at` has no time
    zone or an amount has too many decimals.
    """
    check_invoice(paper)
    story = [*invoice_head(paper), lines_table(paper), *totals_part(paper), *_slip(paper), *notes_part(paper)]
    return build_sheet(story, invoice_info(paper), packed=packed)


def invoice_info(paper: InvoicePaper) -> SheetInfo:
    """What the file says of itself."""
    named = f"{paper.kind} {paper.number}" if paper.number else f"Draft {paper.kind.lower()}"
    return SheetInfo(
        title=invoice_title(paper),
        author=paper.seller.name,
        subject=f"{named} to {paper.buyer.name}",
        made_at=paper.made_at,
        footer=footing((paper.seller.name,), named),
        watermark="" if paper.number else "DRAFT",
    )


def _slip(paper: InvoicePaper) -> list[Flowable]:
    """Nobody is asked to pay a draft, a credit note, or what was paid."""
    if paper.number is None or paper.corrects:
        return []
    return payment_slip(paper.payment, paper.due, paper.currency, paper.digits)

"""An invoice, a draft of one, or a credit note as PDF. What is on paper is what was handed in, to the penny."""

from invoicing.documents.invoice_check import check_invoice
from invoicing.documents.invoice_content import InvoicePaper
from invoicing.documents.invoice_head import invoice_head, invoice_title
from invoicing.documents.invoice_lines import lines_table
from invoicing.documents.invoice_totals import payment_part, totals_part
from trimops.paper.footing import footing
from trimops.paper.sheet import SheetInfo, build_sheet


def invoice_pdf(paper: InvoicePaper) -> bytes:
    """The PDF; the same paper gives the same bytes. A draft has DRAFT across each page.

    Raises InvoiceIncomplete (a RuleBroken) when figures do not add up or a number was given and something the law
    wants on an invoice is missing; ValueError if `made_at` has no time zone or an amount has too many decimals.
    """
    check_invoice(paper)
    story = [*invoice_head(paper), lines_table(paper), *totals_part(paper), *payment_part(paper)]
    named = f"{paper.kind} {paper.number}" if paper.number else f"Draft {paper.kind.lower()}"
    info = SheetInfo(
        title=invoice_title(paper),
        author=paper.seller.name,
        subject=f"{named} to {paper.buyer.name}",
        made_at=paper.made_at,
        footer=footing((paper.seller.name,), named),
        watermark="" if paper.number else "DRAFT",
    )
    return build_sheet(story, info)

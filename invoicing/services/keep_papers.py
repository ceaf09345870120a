"""The documents of an invoice that is being issued: drawn, fingerprinted, kept."""

from django.db import transaction

from invoicing.documents.e_invoice import CannotBeElectronic, cii_xml, ubl_xml
from invoicing.documents.hybrid_pdf import archive_pdf, hybrid_pdf
from invoicing.documents.invoice_check import check_invoice
from invoicing.documents.invoice_content import InvoicePaper
from invoicing.domain.fingerprint import fingerprint
from invoicing.models import Invoice, InvoicePapers, MoneyRules
from invoicing.selectors.invoice_content import invoice_content
from invoicing.selectors.kept_amounts import KeptRows

LONGEST_REASON = 200


@transaction.atomic
def keep_papers(
    *, invoice: Invoice, rows: KeptRows | None = None, rules: MoneyRules | None = None
) -> InvoicePapers:
    """PDF, CII and UBL of an invoice that has its number, each with its SHA-256.

    InvoiceIncomplete when the paper lacks something. Where no e-invoice can be made of it the reason is kept, and the
    PDF carries none. `rows` and `rules` where they were read already.
    """
    paper = invoice_content(invoice, rows, rules)
    check_invoice(paper)
    cii, ubl, why_not = _e_invoices(paper)
    pdf = hybrid_pdf(paper, cii) if cii else archive_pdf(paper)
    papers = InvoicePapers(business_id=invoice.business_id, pdf=pdf, cii=cii, ubl=ubl, no_xml_because=why_not)
    papers.pdf_sha256, papers.cii_sha256, papers.ubl_sha256 = map(fingerprint, (pdf, cii, ubl))
    papers.full_clean(("business",), validate_unique=False, validate_constraints=False)
    papers.save()
    return papers


def _e_invoices(paper: InvoicePaper) -> tuple[bytes, bytes, str]:
    """CII and UBL; or neither, and why."""
    try:
        return cii_xml(paper), ubl_xml(paper), ""
    except CannotBeElectronic as refused:
        return b"", b"", refused.message[:LONGEST_REASON]

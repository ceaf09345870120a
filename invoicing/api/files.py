"""The papers of an invoice as files: the PDF, and the e-invoice as CII and UBL."""

from typing import ClassVar

from django.http import HttpResponse

from invoicing.api.invoices import issued_if_client
from invoicing.documents.invoice_pdf import invoice_pdf
from invoicing.domain.paper_names import paper_name
from invoicing.models import Invoice
from invoicing.selectors.invoice_content import invoice_content
from trimops.accounts.actions import Action
from trimops.api.kinds import FileApi
from trimops.api.op import Op
from trimops.kernel.errors import NotFound
from trimops.web.file_answer import file_answer
from trimops.web.page_rates import Cost
from trimops.web.pdf_answer import pdf_answer

PDF, XML = "application/pdf", "application/xml"


class PaperFile(FileApi):
    """The PDF: the very bytes that were issued; of a draft one that is marked as such, for staff."""

    costs = {"get": Cost.PAPER}
    ops = {"get": Op(Action.SEE_OWN_BILLS, "read_invoice_pdf", "The paper as PDF", media=PDF)}

    def file(self) -> HttpResponse:
        found = self.fetch(Invoice, self.kwargs["pk"], "farm__payer", "business", "papers", "corrects")
        invoice = issued_if_client(found, self.scope)
        content = bytes(invoice.papers.pdf) if invoice.papers else invoice_pdf(invoice_content(invoice))
        return pdf_answer(content, paper_name(invoice.number or f"draft-{invoice.pk}"))


class XmlFile(FileApi):
    """The e-invoice (EN 16931), the very bytes that were issued. 404 for a draft, and where none could be made."""

    form: ClassVar[str]

    def file(self) -> HttpResponse:
        invoice = self.fetch(Invoice, self.kwargs["pk"], "papers")
        content = bytes(getattr(invoice.papers, self.form)) if invoice.papers else b""
        if not content:
            raise NotFound("There is nothing at this address.")
        return file_answer(content, XML, f"{paper_name(invoice.number)}-{self.form}.xml")


class CiiFile(XmlFile):
    """The e-invoice (EN 16931) as CII, the very bytes that were issued. 404 for a draft, and where none was made."""

    form = "cii"
    ops = {"get": Op(Action.SEE_OWN_BILLS, "read_invoice_cii", "The e-invoice as CII", media=XML)}


class UblFile(XmlFile):
    """The e-invoice (EN 16931) as UBL, the very bytes that were issued. 404 for a draft, and where none was made."""

    form = "ubl"
    ops = {"get": Op(Action.SEE_OWN_BILLS, "read_invoice_ubl", "The e-invoice as UBL", media=XML)}

"""What the farm was invoiced, and what of it is paid."""

from datetime import date

from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse

from invoicing.domain.paper_names import paper_name
from invoicing.models import Invoice, InvoicePapers
from invoicing.selectors.farm_invoices import FarmInvoice, farm_invoice, papers_of_farm, to_pay
from invoicing.selectors.invoice_behind_link import account_to_pay
from invoicing.web.xml_answer import xml_answer
from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.kernel.errors import NotFound
from trimops.portal.web.client_page import ClientPage
from trimops.web.pdf_answer import pdf_answer

PER_PAGE = 40
MOST_OPEN = 100


class PortalMoneyPage(ClientPage):
    """What is to pay, how, and every issued paper, the newest first; a draft is not the farm's yet."""

    does = Action.READ_OWN_MONEY
    template = "portal/money.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        today = local_day(self.now, self.seat.business.zone)
        papers = papers_of_farm(self.scope)
        page = Paginator(papers, PER_PAGE).get_page(request.GET.get("page"))
        open_ones = self._open(today)
        return self.show(
            {
                "farm": self.farm(),
                "page": page,
                "rows": [farm_invoice(invoice, today) for invoice in page],
                "open": open_ones,
                "sums": to_pay(self.scope, today),
                "account": account_to_pay(open_ones[0].invoice) if open_ones else (),
            }
        )

    def _open(self, today: date) -> list[FarmInvoice]:
        """Invoices with something left to pay, the longest due first."""
        rows = Invoice.objects.within(self.scope).issued().bills().filter(is_open=True)
        return [farm_invoice(row, today) for row in rows.order_by("due_on", "issued_on", "id")[:MOST_OPEN]]


class _Paper(ClientPage):
    """A paper as it was issued."""

    does = Action.READ_OWN_MONEY

    def papers(self, pk: int) -> tuple[str, InvoicePapers]:
        """Its number and its documents."""
        invoice = self.fetch_from(Invoice.objects.issued().select_related("papers"), pk)
        if invoice.papers is None:
            raise NotFound("There is nothing at this address.")
        return invoice.number, invoice.papers


class PortalInvoicePaper(_Paper):
    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        number, papers = self.papers(pk)
        return pdf_answer(bytes(papers.pdf), paper_name(number))


class PortalInvoiceXml(_Paper):
    def get(self, request: HttpRequest, pk: int, form: str) -> HttpResponse:
        number, papers = self.papers(pk)
        return xml_answer(papers, form, number)

"""Invoices: the list, one, and issuing it."""

from django.contrib import messages
from django.core.paginator import Paginator
from django.db.models import Sum
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from invoicing.documents.invoice_pdf import invoice_pdf
from invoicing.models import Invoice, InvoiceLine
from invoicing.selectors.invoice_content import invoice_content
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.issue_invoice import issue_invoice
from trimops.accounts.roles import Role
from trimops.web.pdf_answer import pdf_answer
from trimops.web.scoped_page import ScopedPage
from visits.domain.visit_states import VisitState
from visits.models import Visit

MONEY = frozenset({Role.OWNER, Role.OFFICE})
PER_PAGE = 40


class InvoiceListPage(ScopedPage):
    roles = MONEY
    template = "invoicing/invoice_list.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        invoices = Invoice.objects.within(self.scope)
        drafts = invoices.drafts()
        rows = invoices.select_related("farm").order_by("state", "-issued_on", "-drafted_at", "-id")
        billed = invoices.filter(visit__isnull=False).values("visit_id")
        finished = Visit.objects.within(self.scope).in_state(VisitState.FINISHED).exclude(pk__in=billed)
        return self.show(
            {
                "page": Paginator(rows, PER_PAGE).get_page(request.GET.get("page")),
                "draft_count": drafts.count(),
                "draft_gross": drafts.aggregate(sum=Sum("gross"))["sum"],
                "not_billed": list(finished.select_related("farm").order_by("-finished_at")[:10]),
            }
        )


class InvoicePage(ScopedPage):
    roles = MONEY
    template = "invoicing/invoice.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        invoice = self.fetch(Invoice, pk, "farm__payer", "visit", "business", "papers")
        lines = InvoiceLine.objects.within(self.scope).filter(invoice=invoice)
        return self.show({"invoice": invoice, "lines": lines})

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        """Issue it."""
        issued = issue_invoice(invoice=self.fetch(Invoice, pk), at=self.now, by=self.seat.user)
        messages.success(request, f"Invoice {issued.number} is issued.")
        return redirect("invoice", issued.pk)


class InvoicePaper(ScopedPage):
    """The PDF: the stored one of an issued invoice, a marked draft before."""

    roles = MONEY

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        invoice = self.fetch(Invoice, pk, "farm__payer", "business", "papers", "corrects")
        content = bytes(invoice.papers.pdf) if invoice.papers else invoice_pdf(invoice_content(invoice))
        return pdf_answer(content, invoice.number or f"draft-{invoice.pk}")


class DraftInvoicePage(ScopedPage):
    """Draft the invoice of a finished visit that has none (its prices were missing, say)."""

    roles = MONEY

    def post(self, request: HttpRequest, visit_pk: int) -> HttpResponseBase:
        invoice = draft_invoice(visit=self.fetch(Visit, visit_pk), at=self.now)
        if invoice is None:
            messages.warning(request, "Nothing on that visit is charged for.")
            return redirect("invoice_list")
        return redirect("invoice", invoice.pk)

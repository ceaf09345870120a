"""The office's desk, the lists of invoices, and one of them."""

from urllib.parse import urlencode

from django.conf import settings
from django.contrib import messages
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from invoicing.documents.invoice_pdf import invoice_pdf
from invoicing.models import DocumentAmount, DraftEdit, Invoice
from invoicing.selectors.bill_difference import bill_difference
from invoicing.selectors.draft_misfits import lost_claims
from invoicing.selectors.invoice_content import invoice_content
from invoicing.selectors.invoice_rows import (
    Show,
    draft_rows,
    for_list,
    issued_rows,
    next_draft,
    sums_of,
    years_issued,
)
from invoicing.selectors.line_work import left_off, line_stories
from invoicing.selectors.money_desk import money_desk
from invoicing.selectors.visit_margin import visit_margin
from invoicing.selectors.visits_billed import visits_billed
from invoicing.services.issue_and_send import issue_and_send
from invoicing.services.issue_invoice import issue_invoice
from invoicing.web.search_form import wanted_from
from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.web.page_rates import Cost
from trimops.web.pdf_answer import pdf_answer
from trimops.web.scoped_page import ScopedPage

PER_PAGE = 40
ON_THE_DESK = 8
PARTS = ("farm__payer", "payer", "business", "papers", "corrects")
BYTES = ("papers__pdf", "papers__cii", "papers__ubl")


class InvoiceListPage(ScopedPage):
    """The desk: what is to be billed, sent and paid."""

    does = Action.SEE_MONEY
    template = "invoicing/invoice_list.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        business = self.seat.business
        today = local_day(self.now, business.zone)
        issued = Invoice.objects.within(self.scope).issued().order_by("-issued_on", "-id")
        return self.show(
            {
                "desk": money_desk(self.scope, business.currency, today),
                "drafts": list(draft_rows(self.scope)[:ON_THE_DESK]),
                "issued": list(for_list(issued)[:ON_THE_DESK]),
                "next": next_draft(self.scope, today),
                "today": today,
            }
        )


class DraftsPage(ScopedPage):
    """Every draft with its total, the oldest work first."""

    does = Action.SEE_MONEY
    template = "invoicing/invoice_drafts.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        rows = draft_rows(self.scope)
        today = local_day(self.now, self.seat.business.zone)
        return self.show(
            {
                "page": Paginator(rows, PER_PAGE).get_page(request.GET.get("page")),
                "sums": sums_of(rows),
                "next": next_draft(self.scope, today),
                "today": today,
            }
        )


class IssuedPage(ScopedPage):
    """Everything issued: searched, narrowed, summed up."""

    does = Action.SEE_MONEY
    template = "invoicing/invoice_issued.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        today = local_day(self.now, self.seat.business.zone)
        wanted = wanted_from(request.GET)
        rows = issued_rows(self.scope, wanted, today)
        asked = {"q": wanted.words, "year": wanted.year or "", "show": wanted.show.value}
        return self.show(
            {
                "page": Paginator(for_list(rows), PER_PAGE).get_page(request.GET.get("page")),
                "sums": sums_of(rows),
                "wanted": wanted,
                "years": years_issued(self.scope),
                "shows": list(Show),
                "keep_query": urlencode({name: value for name, value in asked.items() if value}),
                "today": today,
            }
        )


class InvoicePage(ScopedPage):
    """One invoice: a draft with the reason of each line, or an issued one as it left the house."""

    does = {"get": Action.SEE_MONEY, "post": Action.KEEP_MONEY}
    template = "invoicing/invoice.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        rows = Invoice.objects.within(self.scope).select_related(*PARTS).defer(*BYTES)
        invoice = self.fetch_from(rows, pk)
        today = local_day(self.now, self.seat.business.zone)
        visits = visits_billed(invoice)
        notes = Invoice.objects.within(self.scope).credit_notes().filter(corrects=invoice)
        is_compared = invoice.is_issued and not invoice.is_credit_note and invoice.farm.erased_at is None
        changed = map(bill_difference, visits) if is_compared else []
        return self.show(
            {
                "invoice": invoice,
                "stories": line_stories(invoice, frozenset() if invoice.is_issued else lost_claims(invoice)),
                "whole": DocumentAmount.objects.within(self.scope).filter(invoice=invoice),
                "edits": DraftEdit.objects.within(self.scope).filter(invoice=invoice).select_related("by"),
                "left_off": left_off(invoice),
                "visits": visits,
                "margin": visit_margin(invoice, visits),
                "changed": [difference for difference in changed if difference],
                "credit_notes": for_list(notes),
                "next": None if invoice.is_issued else next_draft(self.scope, today, invoice),
                "today": today,
            }
        )

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        """Issue it; with `act=send` send it too. The next draft follows, so that a whole evening goes by one key."""
        draft = self.fetch(Invoice, pk)
        following = next_draft(self.scope, local_day(self.now, self.seat.business.zone), draft)
        if request.POST.get("act") == "send":
            issued = issue_and_send(invoice=draft, at=self.now, by=self.seat.user)
            way = "on its way by mail" if settings.EMAIL_HOST else "in the mail folder: no mail server is set"
            messages.success(request, f"{issued.number} is issued and {way}.")
        else:
            issued = issue_invoice(invoice=draft, at=self.now, by=self.seat.user)
            messages.success(request, f"{issued.number} is issued. It is not sent.")
            return redirect("invoice", issued.pk)
        if following is None:
            return redirect("invoice_list")
        return redirect("invoice", following.pk)


class InvoicePaper(ScopedPage):
    """The PDF: the stored one of an issued invoice, a marked draft before."""

    does = Action.SEE_MONEY
    costs = {"get": Cost.PAPER}

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        invoice = self.fetch(Invoice, pk, "farm__payer", "business", "papers", "corrects")
        content = bytes(invoice.papers.pdf) if invoice.papers else invoice_pdf(invoice_content(invoice))
        return pdf_answer(content, invoice.number or f"draft-{invoice.pk}")

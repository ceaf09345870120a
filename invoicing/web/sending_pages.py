"""Sending papers: the mail before it goes, what became of each, and links to one invoice."""

from datetime import timedelta

from django.conf import settings
from django.contrib import messages
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect
from django.views.decorators.debug import sensitive_variables

from invoicing.models import Invoice, InvoiceLink, Sending
from invoicing.selectors.invoice_mail import invoice_mail
from invoicing.selectors.sending_rows import (
    SendingFilter,
    never_mailed,
    sending_counts,
    sending_of_mail,
    sending_row,
    sendings,
    sendings_of,
    told_first,
)
from invoicing.services.close_invoice_link import close_invoice_link
from invoicing.services.make_invoice_link import NotIssuedYet, make_invoice_link
from invoicing.services.send_invoice import send_invoice
from invoicing.web.sending_forms import SendForm
from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.kernel.errors import NotFound
from trimops.web.scoped_page import ScopedPage

PER_PAGE = 40
LATELY = timedelta(days=30)
MAIL_ROWS = ("farm__payer", "business", "corrects")


class InvoiceSendPage(ScopedPage):
    """The mail as it would go; its subject, text and addresses may be changed."""

    does = Action.KEEP_MONEY
    template = "invoicing/invoice_send.html"

    def invoice(self, pk: int) -> Invoice:
        found = self.fetch(Invoice, pk, *MAIL_ROWS)
        if not found.is_issued:
            raise NotIssuedYet("This is a draft still: issue it first, then send it.")
        return found

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        invoice = self.invoice(pk)
        return self._show(invoice, SendForm(mail=invoice_mail(invoice)))

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        invoice = self.invoice(pk)
        form = SendForm(request.POST, mail=invoice_mail(invoice))
        if not form.is_valid():
            return self._show(invoice, form, status=400)
        said = form.cleaned_data
        queued = send_invoice(
            invoice=invoice,
            at=self.now,
            by=self.seat.user,
            addresses=form.to(),
            subject=said["subject"],
            body=said["body"],
            with_link=said["with_link"],
            with_xml=said.get("with_xml", False),
        )
        to = ", ".join(sending.outgoing.address for sending in queued)
        messages.success(request, f"{invoice.number} is on its way to {to}. What became of it stands below.")
        return redirect("invoice_send", invoice.pk)

    def _show(self, invoice: Invoice, form: SendForm, status: int = 200) -> HttpResponse:
        rows = sendings_of(invoice)
        return self.show(
            {
                "invoice": invoice,
                "form": form,
                "mail": form.mail,
                "rows": rows,
                "last": told_first(rows),
                "has_mail_server": bool(settings.EMAIL_HOST),
            },
            status=status,
        )


class SendingsPage(ScopedPage):
    """Of the papers of the money: what did not go, what waits, all, and what was never mailed."""

    does = Action.SEE_MONEY
    template = "invoicing/sendings.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        counts = sending_counts(self.scope)
        first = SendingFilter.TO_SEE_TO if counts.to_see_to else SendingFilter.ALL
        asked = request.GET.get("show", first.value)
        shown = SendingFilter(asked) if asked in set(SendingFilter) else first
        today = local_day(self.now, self.seat.business.zone)
        page = Paginator(sendings(self.scope, shown), PER_PAGE).get_page(request.GET.get("page"))
        return self.show(
            {
                "counts": counts,
                "shown": shown,
                "filters": list(SendingFilter),
                "page": page,
                "rows": [sending_row(sending) for sending in page],
                "never": never_mailed(self.scope, today - LATELY),
                "keep_query": f"show={shown.value}",
                "has_mail_server": bool(settings.EMAIL_HOST),
            }
        )


class SendingPage(ScopedPage):
    """Where a mail used to be told of; it stands among all that leaves now."""

    does = Action.SEE_MONEY

    def get(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        return redirect("outgoing", self.fetch(Sending, pk).outgoing_id)


class SentPaperPage(ScopedPage):
    """From an outgoing mail to what it is about: its invoice's mails, or the farm's account."""

    does = Action.SEE_MONEY

    def get(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        sending = sending_of_mail(self.scope, pk)
        if sending is None:
            raise NotFound("There is nothing at this address.")
        if sending.invoice_id is not None:
            return redirect("invoice_send", sending.invoice_id)
        return redirect("farm_account", sending.farm_id)


class InvoiceLinksPage(ScopedPage):
    """Links that open one invoice: who may have one is for the office to say; a new one is shown once."""

    does = Action.KEEP_MONEY
    template = "invoicing/invoice_links.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        return self._show(self.fetch(Invoice, pk, "farm"))

    @sensitive_variables("made")
    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        invoice = self.fetch(Invoice, pk, "farm")
        made = make_invoice_link(invoice=invoice, at=self.now)
        answer = self._show(invoice, made.address)
        answer["Cache-Control"] = "no-store"
        return answer

    def _show(self, invoice: Invoice, new_address: str = "") -> HttpResponse:
        rows = InvoiceLink.objects.within(self.scope).filter(invoice=invoice, closed_at__isnull=True)
        alive = list(rows.filter(expires_at__gt=self.now))
        return self.show({"invoice": invoice, "links": alive, "new_address": new_address})


class InvoiceLinkClosePage(ScopedPage):
    does = Action.KEEP_MONEY

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        link = close_invoice_link(link=self.fetch(InvoiceLink, pk), at=self.now)
        messages.success(request, "The link is closed; it opens nothing any more.")
        return redirect("invoice_links", link.invoice_id)

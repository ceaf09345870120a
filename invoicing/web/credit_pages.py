"""A credit note is drafted from an issued invoice."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from invoicing.models import Invoice, InvoiceLine
from invoicing.selectors.credit_left import credit_left
from invoicing.services.credit_invoice import CannotCredit, draft_credit_note
from invoicing.web.credit_form import CreditForm
from trimops.accounts.actions import Action
from trimops.web.scoped_page import ScopedPage


class CreditPage(ScopedPage):
    """Everything that is left, or chosen lines; with the reason that stands on the credit note."""

    does = Action.KEEP_MONEY
    template = "invoicing/invoice_credit.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        invoice = self._invoice(pk)
        return self._show(invoice, self._form(invoice))

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        invoice = self._invoice(pk)
        form = self._form(invoice, request)
        if form.is_valid():
            try:
                note = draft_credit_note(
                    invoice=invoice,
                    asks=form.asks(),
                    reason=form.cleaned_data["reason"],
                    work_may_be_billed_again=form.cleaned_data["again"],
                    at=self.now,
                    by=self.seat.user,
                )
            except CannotCredit as refusal:
                form.add_error(None, refusal.message)
            else:
                messages.success(request, "The credit note is drafted. Look at it, then issue it.")
                return redirect("invoice", note.pk)
        return self._show(invoice, form, 400)

    def _invoice(self, pk: int) -> Invoice:
        invoice = self.fetch(Invoice, pk, "farm", "business")
        if not invoice.is_issued or invoice.is_credit_note:
            raise CannotCredit("Only an issued invoice is credited: change a draft instead.")
        return invoice

    def _form(self, invoice: Invoice, request: HttpRequest | None = None) -> CreditForm:
        left = credit_left(invoice)
        lines = list(InvoiceLine.objects.within(self.scope).filter(invoice=invoice, pk__in=left))
        return CreditForm(request.POST if request else None, lines=lines, left=left)

    def _show(self, invoice: Invoice, form: CreditForm, status: int = 200) -> HttpResponse:
        return self.show({"invoice": invoice, "form": form}, status=status)

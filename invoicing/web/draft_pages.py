"""A draft is changed by hand: a line, the whole, what stands above it; or all of that is undone."""

from decimal import Decimal
from typing import ClassVar

from django import forms
from django.contrib import messages
from django.db import transaction
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from invoicing.models import DocumentAmount, Invoice, InvoiceLine, TaxRate
from invoicing.selectors.price_book import rates_held
from invoicing.services.add_line import HandLine, add_line
from invoicing.services.change_draft_head import change_draft_head
from invoicing.services.change_line import change_line
from invoicing.services.discard_draft import discard_draft
from invoicing.services.draft_anew import draft_anew
from invoicing.services.lock_draft import NotADraft
from invoicing.services.open_draft import ChangeRefused, Hand
from invoicing.services.set_whole_amount import WholeChange, drop_whole_amount, set_whole_amount
from invoicing.services.strike_line import strike_line
from invoicing.services.total_draft import LessThanNothing
from invoicing.web.draft_forms import HandLineForm, HeadForm, LineForm, ReasonForm, WholeForm
from trimops.accounts.actions import Action
from trimops.web.scoped_page import ScopedPage

REFUSALS = (ChangeRefused, LessThanNothing)


class DraftPage(ScopedPage):
    """A form about one draft; what it cannot be is told above the form."""

    does = Action.KEEP_MONEY
    template = "invoicing/invoice_change.html"
    title: ClassVar[str] = ""
    do_label: ClassVar[str] = "Keep the change"
    strike: ClassVar[bool] = False

    def draft(self, pk: int) -> Invoice:
        found = self.fetch(Invoice, pk, "farm", "business")
        if found.is_issued:
            raise NotADraft("This is issued: it cannot be changed any more. Credit it instead.")
        return found

    def hand(self, form: forms.Form) -> Hand:
        return Hand(self.seat.user, self.now, form.cleaned_data["reason"])

    def ask(self, invoice: Invoice, form: forms.Form, status: int = 200, **more: object) -> HttpResponse:
        words = {"title": self.title, "do_label": self.do_label, "strike": self.strike}
        return self.show({"invoice": invoice, "form": form, **words, **more}, status=status)

    def kept(self, invoice: Invoice) -> HttpResponseBase:
        messages.success(self.request, "The draft is changed; the reason is kept with it.")
        return redirect("invoice", invoice.pk)


class LinePage(DraftPage):
    """One line: text, how many, discount; or struck off."""

    title = "Change a line"
    strike = True

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        line = self._line(pk)
        return self.ask(self.draft(line.invoice_id), LineForm(line=line), line=line)

    @transaction.atomic
    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        invoice = self.draft(self._line(pk).invoice_id)
        invoice.locked()
        line = self._line(pk)
        form = LineForm(request.POST, line=line)
        if form.is_valid():
            try:
                if request.POST.get("act") == "strike":
                    strike_line(line=line, hand=self.hand(form))
                else:
                    change_line(line=line, change=form.change(), hand=self.hand(form))
            except REFUSALS as refusal:
                form.add_error(None, refusal.message)
            else:
                return self.kept(invoice)
        return self.ask(invoice, form, form.refused_as, line=line)

    def _line(self, pk: int) -> InvoiceLine:
        return self.fetch(InvoiceLine, pk, "invoice")


class HandLinePage(DraftPage):
    """A line that no work gave rise to."""

    title = "Put in a line"
    do_label = "Put it in"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        invoice = self.draft(pk)
        return self.ask(invoice, HandLineForm(rates=self._rates(invoice)))

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        invoice = self.draft(pk)
        form = HandLineForm(request.POST, rates=self._rates(invoice))
        if form.is_valid():
            said = form.cleaned_data
            line = HandLine(said["description"], said["quantity"], said["unit_price"], form.rate())
            try:
                add_line(invoice=invoice, line=line, hand=self.hand(form))
            except REFUSALS as refusal:
                form.add_error(None, refusal.message)
            else:
                return self.kept(invoice)
        return self.ask(invoice, form, 400)

    def _rates(self, invoice: Invoice) -> list[TaxRate]:
        return list(rates_held(self.scope, invoice.tax_point).values())


class WholePage(DraftPage):
    """A discount or a charge on the whole."""

    title = "Discount or charge on the whole"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        invoice = self.draft(pk)
        return self.ask(invoice, WholeForm(rates=self._rates(invoice)))

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        invoice = self.draft(pk)
        form = WholeForm(request.POST, rates=self._rates(invoice))
        if form.is_valid():
            is_charge = form.cleaned_data["what"] == "charge"
            change = WholeChange(is_charge, form.discount(), form.chosen())
            try:
                set_whole_amount(invoice=invoice, change=change, hand=self.hand(form))
            except REFUSALS as refusal:
                form.add_error(None, refusal.message)
            else:
                return self.kept(invoice)
        return self.ask(invoice, form, 400)

    def _rates(self, invoice: Invoice) -> list[tuple[str, Decimal]]:
        rows = InvoiceLine.objects.within(self.scope).filter(invoice=invoice).order_by("position")
        return list(dict.fromkeys(rows.values_list("tax_category", "tax_percent")))


class WholeDropPage(DraftPage):
    """A discount or a charge on the whole is taken off again."""

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        amount = self.fetch(DocumentAmount, pk, "invoice")
        form = ReasonForm(request.POST)
        hand = Hand(self.seat.user, self.now, form.cleaned_data["reason"] if form.is_valid() else "")
        return self.kept(drop_whole_amount(amount=amount, hand=hand))


class HeadPage(DraftPage):
    """Order number, note, what was paid before, tax point."""

    title = "Order number, note, paid before, tax point"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        invoice = self.draft(pk)
        return self.ask(invoice, HeadForm(invoice=invoice))

    @transaction.atomic
    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        self.draft(pk).locked()
        invoice = self.draft(pk)
        form = HeadForm(request.POST, invoice=invoice)
        if form.is_valid():
            try:
                change_draft_head(invoice=invoice, head=form.head(invoice), hand=self.hand(form))
            except REFUSALS as refusal:
                form.add_error(None, refusal.message)
            else:
                return self.kept(invoice)
        return self.ask(invoice, form, form.refused_as)


class UndoPage(DraftPage):
    """Start over: draft anew from the work, or throw the draft away."""

    template = "invoicing/invoice_undo.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        return self.ask(self.draft(pk), ReasonForm())

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        invoice, form = self.draft(pk), ReasonForm(request.POST)
        if not form.is_valid():
            return self.ask(invoice, form, 400)
        if request.POST.get("act") == "discard":
            discard_draft(invoice=invoice, at=self.now)
            messages.success(request, "The draft is thrown away. Its work is ready to be billed again.")
            return redirect("bill_ready")
        after = draft_anew(invoice=invoice, hand=self.hand(form))
        if after is None:
            messages.warning(request, "Nothing is left to bill, so the draft is gone.")
            return redirect("bill_ready")
        return self.kept(after)

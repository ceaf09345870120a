"""How one invoice or credit note was settled: written off, set off, paid back, and undone."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from invoicing.domain.minor_units import minor_digits
from invoicing.domain.settling import PaymentMethod
from invoicing.models import Allocation, Invoice
from invoicing.selectors.open_invoices import OpenRow, open_invoices
from invoicing.selectors.settled_by import settled_by
from invoicing.services.pay_back import MoneyBack, pay_back
from invoicing.services.set_off_credit import set_off_credit
from invoicing.services.undo_set_off import undo_set_off
from invoicing.services.write_off import write_off
from invoicing.web.payment_forms import AmountForm, PaidBackForm, WhyForm
from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.kernel.errors import NotFound, RuleBroken
from trimops.kernel.money import round_money
from trimops.web.scoped_page import ScopedPage


class SettledPage(ScopedPage):
    """What was set against an invoice (or what a credit note was used for), and what can be done with the rest."""

    does = Action.KEEP_MONEY
    template = "invoicing/settled.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        return self._show(self._paper(pk))

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        """Write off the rest of an invoice, or pay back the rest of a credit note."""
        paper = self._paper(pk)
        form = PaidBackForm(request.POST) if paper.is_credit_note else AmountForm(request.POST)
        if form.is_valid():
            try:
                self._settle(paper, form)
            except RuleBroken as fault:
                form.add_error(None, fault.message)
            else:
                messages.success(request, "Paid back." if paper.is_credit_note else "Written off.")
                return redirect("invoice_settled", pk)
        return self._show(paper, form, 400)

    def _settle(self, paper: Invoice, form: AmountForm | PaidBackForm) -> None:
        told, by = form.cleaned_data, self.seat.user
        if paper.is_credit_note:
            method = PaymentMethod(told["method"])
            money = MoneyBack(paper, told["paid_on"], told["amount"], method, told["note"])
            pay_back(money=money, at=self.now, by=by)
        else:
            write_off(invoice=paper, reason=told["reason"], at=self.now, by=by, amount=told["amount"])

    def _paper(self, pk: int) -> Invoice:
        paper = self.fetch(Invoice, pk, "farm__payer", "business")
        if not paper.is_issued:
            raise NotFound("A draft is not paid.")
        return paper

    def _show(
        self, paper: Invoice, form: AmountForm | PaidBackForm | None = None, status: int = 200
    ) -> HttpResponse:
        rows: list[OpenRow] = []
        if paper.is_credit_note and paper.is_open:
            rows = open_invoices(self.scope, paper.farm, paper.currency)
        told = {"paper": paper, "parts": settled_by(paper), "bills": rows}
        return self.show({**told, "form": form or self._first_form(paper)}, status=status)

    def _first_form(self, paper: Invoice) -> AmountForm | PaidBackForm:
        amount = round_money(paper.open_amount, minor_digits(paper.currency))
        if not paper.is_credit_note:
            return AmountForm(initial={"amount": amount})
        today = local_day(self.now, self.seat.business.zone)
        told = {"amount": amount, "paid_on": today, "method": PaymentMethod.BANK.value}
        return PaidBackForm(initial=told)


class SetOffButton(ScopedPage):
    """Set a credit note off against one open invoice, by as much as fits."""

    does = Action.KEEP_MONEY

    def post(self, request: HttpRequest, pk: int, bill_pk: int) -> HttpResponseBase:
        note, bill = self.fetch(Invoice, pk), self.fetch(Invoice, bill_pk)
        set_off_credit(credit_note=note, invoice=bill, at=self.now, by=self.seat.user)
        messages.success(request, f"{note.number} is set off against {bill.number}.")
        return redirect("invoice_settled", pk)


class UndoPage(ScopedPage):
    """One thing that was set against an invoice is undone, with a reason."""

    does = Action.KEEP_MONEY
    template = "invoicing/settled_undo.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        return self._show(pk, WhyForm())

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        row, form = self.fetch(Allocation, pk, "invoice", "payment", "credit_note"), WhyForm(request.POST)
        if form.is_valid():
            try:
                undo_set_off(allocation=row, because=form.cleaned_data["because"], at=self.now)
            except RuleBroken as fault:
                form.add_error(None, fault.message)
            else:
                messages.success(request, f"Undone: {row.invoice.number} is open again by that much.")
                return redirect("invoice_settled", row.invoice_id)
        return self._show(pk, form, 400)

    def _show(self, pk: int, form: WhyForm, status: int = 200) -> HttpResponse:
        row = self.fetch(Allocation, pk, "invoice", "payment", "credit_note")
        return self.show({"row": row, "form": form}, status=status)

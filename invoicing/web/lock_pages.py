"""Closing the books up to a day, and opening them again."""

from datetime import date, timedelta

from django import forms
from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from invoicing.models import Invoice
from invoicing.models.invoice import InvoiceQuerySet
from invoicing.selectors.period_lock import lock_history, locked_until
from invoicing.services.lock_period import lock_period
from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.web.day_input import DAY
from trimops.web.scoped_page import ScopedPage

DRAFTS_SHOWN = 40


class LockForm(forms.Form):
    until = forms.DateField(
        label="Locked up to and with",
        widget=DAY,
        required=False,
        help_text="Empty: nothing is locked, all is open again.",
    )
    why = forms.CharField(
        label="Why", max_length=200, help_text="For instance: the quarter went to the accountant."
    )
    even_so = forms.BooleanField(
        label="Lock although drafts lie inside: they cannot be issued then", required=False
    )


class PeriodLockPage(ScopedPage):
    """The office may look; the owner locks and opens."""

    does = {"get": Action.SEE_MONEY, "post": Action.LOCK_BOOKS}
    template = "invoicing/period_lock.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        until = self._suggested()
        return self._show(LockForm(initial={"until": until}), until)

    def post(self, request: HttpRequest) -> HttpResponseBase:
        form = LockForm(request.POST)
        until = form.cleaned_data["until"] if form.is_valid() else None
        if form.is_valid() and not form.cleaned_data["even_so"] and self._drafts(until).exists():
            form.add_error("even_so", "Drafts lie inside: issue them first, or tick this.")
        if form.is_valid():
            try:
                why = form.cleaned_data["why"]
                lock_period(scope=self.scope, until=until, why=why, at=self.now, by=self.seat.user)
            except RuleBroken as fault:
                form.add_error(None, fault.message)
            else:
                messages.success(request, "Kept, with the reason.")
                return redirect("period_lock")
        return self._show(form, until, 400)

    def _suggested(self) -> date:
        """The end of the last month."""
        return local_day(self.now, self.seat.business.zone).replace(day=1) - timedelta(days=1)

    def _drafts(self, until: date | None) -> InvoiceQuerySet:
        """Drafts whose tax point lies inside."""
        rows: InvoiceQuerySet = Invoice.objects.within(self.scope).drafts()
        return rows.filter(tax_point__lte=until) if until else rows.none()

    def _show(self, form: LockForm, until: date | None, status: int = 200) -> HttpResponse:
        drafts = self._drafts(until)
        context: dict[str, object] = {
            "form": form,
            "until": until,
            "locked_until": locked_until(self.scope),
            "history": lock_history(self.scope),
            "drafts": list(drafts.select_related("farm").order_by("tax_point", "pk")[:DRAFTS_SHOWN]),
            "draft_count": drafts.count(),
            "may_lock": self.seat.allows(Action.LOCK_BOOKS),
        }
        return self.show(context, status=status)

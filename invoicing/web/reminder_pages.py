"""Reminders: looked at, approved or dropped by a person."""

from django import forms
from django.contrib import messages
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from invoicing.documents.reminder_pdf import reminder_pdf
from invoicing.domain.paper_names import paper_name
from invoicing.domain.reminder_steps import read_days, step_words
from invoicing.models import Reminder
from invoicing.selectors.interest_due import claim_of, claim_rules
from invoicing.selectors.money_addresses import money_addresses
from invoicing.selectors.money_rules import money_rules
from invoicing.selectors.reminder_content import reminder_content, working_words
from invoicing.selectors.reminders_due import decided_reminders, reminders_due, waiting_reminders
from invoicing.services.decide_reminder import approve_reminder, drop_reminder
from invoicing.services.propose_reminders import propose_reminders
from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.web.asked import number_asked
from trimops.web.page_rates import Cost
from trimops.web.pdf_answer import pdf_answer
from trimops.web.scoped_page import ScopedPage

PER_PAGE = 40


class DropForm(forms.Form):
    because = forms.CharField(label="Why it is not sent", max_length=200)


class RemindersPage(ScopedPage):
    does = {"get": Action.SEE_MONEY, "post": Action.KEEP_MONEY}
    template = "invoicing/reminders.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        rules = money_rules(self.scope)
        payers = reminders_due(self.scope, local_day(self.now, self.seat.business.zone))
        page = Paginator(decided_reminders(self.scope), PER_PAGE).get_page(request.GET.get("page"))
        return self.show(
            {
                "payers": payers,
                "waiting": sum(len(payer.reminders) for payer in payers),
                "rules": rules,
                "days": read_days(rules.reminder_days),
                "page": page,
            }
        )

    def post(self, request: HttpRequest) -> HttpResponseBase:
        """Look the open invoices through now."""
        made = propose_reminders(business=self.seat.business, at=self.now)
        messages.success(
            request, f"{made} more to look at." if made else "No other invoice has come to a step."
        )
        return redirect("reminders")


class RemindersApprove(ScopedPage):
    """Several at once: those of one payer, each with a mail of its own."""

    does = Action.KEEP_MONEY

    def post(self, request: HttpRequest) -> HttpResponseBase:
        keys = {key for text in request.POST.getlist("reminder") if (key := number_asked(text))}
        rows = list(waiting_reminders(self.scope).filter(pk__in=keys).select_related("invoice", "business"))
        gone = 0
        for row in rows:
            try:
                mails = approve_reminder(reminder=row, at=self.now, by=self.seat.user)
            except RuleBroken as fault:
                messages.error(request, fault.message)
            else:
                gone += 1
                if not mails:
                    messages.warning(
                        request, f"{row.invoice.number}: no address is known. Print it below and post it."
                    )
        if gone:
            messages.success(
                request, f"{gone} approved; the mails are on their way where an address is known."
            )
        return redirect("reminders")


class ReminderPage(ScopedPage):
    """One reminder: what it claims and how that was reckoned."""

    does = {"get": Action.SEE_MONEY, "post": Action.KEEP_MONEY}
    template = "invoicing/reminder.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        return self._show(DropForm(), self._row(pk))

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        """Drop it, with a reason."""
        row, form = self._row(pk), DropForm(request.POST)
        if not form.is_valid():
            return self._show(form, row, 400)
        drop_reminder(reminder=row, because=form.cleaned_data["because"], at=self.now, by=self.seat.user)
        messages.success(request, f"The reminder of {row.invoice.number} is dropped.")
        return redirect("reminders")

    def _row(self, pk: int) -> Reminder:
        return self.fetch(Reminder, pk, "invoice__farm__payer", "business", "decided_by")

    def _show(self, form: DropForm, row: Reminder, status: int = 200) -> HttpResponse:
        rules = money_rules(self.scope)
        day = local_day(self.now, self.seat.business.zone)
        claim = claim_of(row.invoice, day, claim_rules(self.scope, rules))
        working = row.working or working_words(claim.stretches, rules.interest_days_in_year)
        context = {
            "reminder": row,
            "form": form,
            "words": step_words(row.step, read_days(rules.reminder_days)),
            "claim": claim,
            "total": row.invoice.open_amount + claim.interest + claim.fixed_sum,
            "kept_total": row.claimed,
            "working": working.splitlines(),
            "addresses": money_addresses(row.invoice.farm),
        }
        return self.show(context, status=status)


class ReminderPaper(ScopedPage):
    """The PDF: as it went out, or as it would today."""

    does = Action.SEE_MONEY
    costs = {"get": Cost.PAPER}

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        row = self.fetch(Reminder, pk, "invoice__farm__payer", "invoice__business", "invoice__corrects")
        name = f"reminder-{paper_name(row.invoice.number)}-{row.step}"
        if row.pdf:
            return pdf_answer(bytes(row.pdf), name)
        day = local_day(self.now, self.seat.business.zone)
        claims = claim_rules(self.scope, money_rules(self.scope))
        claim = claim_of(row.invoice, day, claims)
        return pdf_answer(reminder_pdf(reminder_content(row.invoice, row.step, day, claim, claims)), name)

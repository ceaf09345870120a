"""What is ready to be billed, and work that changed after its bill."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect
from django.urls import reverse

from invoicing.models.invoice import InvoiceQuerySet
from invoicing.selectors.bill_difference import bill_difference, price_difference
from invoicing.selectors.invoice_rows import ready_drafts, sums_of
from invoicing.selectors.ready_to_bill import ready_to_bill
from invoicing.selectors.visits_billed import bill_of_visit
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.draft_late_work import draft_late_work
from invoicing.services.draft_ready import draft_ready
from invoicing.services.issue_run import start_issue_run
from invoicing.services.leave_unbilled import bill_after_all, leave_unbilled
from invoicing.services.open_draft import Hand
from invoicing.web.draft_forms import IssueAllForm, ReasonForm
from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.web.scoped_page import ScopedPage
from trimops.web.templatetags.figures import money
from visits.models import Visit

TOLD_AT_ONCE = 3


class ReadyPage(ScopedPage):
    """Visits without a draft, months that are over, changed work; one press drafts all."""

    does = Action.KEEP_MONEY
    template = "invoicing/bill_ready.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        today = local_day(self.now, self.seat.business.zone)
        return self.show({"ready": ready_to_bill(self.scope, today), "today": today})

    def post(self, request: HttpRequest) -> HttpResponseBase:
        """Draft all; the first draft follows."""
        result = draft_ready(business=self.seat.business, at=self.now)
        for visit, why in result.refused[:TOLD_AT_ONCE]:
            messages.error(request, f"{visit.farm.name}: {why}")
        if len(result.refused) > TOLD_AT_ONCE:
            messages.error(request, f"{len(result.refused) - TOLD_AT_ONCE} more could not be drafted.")
        for visit in result.free[:TOLD_AT_ONCE]:
            messages.warning(request, f"{visit.farm.name}: nothing on that visit is charged for.")
        if not result.drafts:
            return redirect("bill_ready")
        many = len(result.drafts)
        messages.success(request, f"{many} {'draft is' if many == 1 else 'drafts are'} made.")
        return redirect("invoice_drafts") if many > 1 else redirect("invoice", next(iter(result.drafts)))


class DraftInvoicePage(ScopedPage):
    """Draft one finished visit."""

    does = Action.KEEP_MONEY

    def post(self, request: HttpRequest, visit_pk: int) -> HttpResponseBase:
        invoice = draft_invoice(visit=self.fetch(Visit, visit_pk, "farm", "business"), at=self.now)
        if invoice is None:
            messages.warning(request, "Nothing on that visit is charged for.")
            return redirect("bill_ready")
        return redirect("invoice", invoice.pk)


class VisitBillPage(ScopedPage):
    """From a visit to what bills it; to what is ready where nothing does."""

    does = Action.SEE_MONEY

    def get(self, request: HttpRequest, visit_pk: int) -> HttpResponseBase:
        invoice = bill_of_visit(self.fetch(Visit, visit_pk))
        return redirect("bill_ready") if invoice is None else redirect("invoice", invoice.pk)


class LeaveUnbilledPage(ScopedPage):
    """What nothing bills of a visit is left unbilled, and why."""

    does = Action.KEEP_MONEY
    template = "web/confirm.html"

    def get(self, request: HttpRequest, visit_pk: int) -> HttpResponse:
        return self._show(self.fetch(Visit, visit_pk, "farm"), ReasonForm())

    def post(self, request: HttpRequest, visit_pk: int) -> HttpResponseBase:
        visit, form = self.fetch(Visit, visit_pk, "farm", "business"), ReasonForm(request.POST)
        if not form.is_valid():
            return self._show(visit, form, 400)
        hand = Hand(self.seat.user, self.now, form.cleaned_data["reason"])
        many = leave_unbilled(visit=visit, hand=hand)
        messages.success(request, f"{many} pieces of work at {visit.farm.name} are left unbilled.")
        return redirect("bill_ready")

    def _show(self, visit: Visit, form: ReasonForm, status: int = 200) -> HttpResponse:
        return self.show(
            {
                "question": f"Leave the work at {visit.farm.name} unbilled?",
                "consequences": ["It is not proposed again. You can bring it back from the list."],
                "do_label": "Leave it unbilled",
                "keep_label": "Back to the list",
                "keep_url": reverse("bill_ready"),
                "form": form,
            },
            status=status,
        )


class BillAfterAllPage(ScopedPage):
    """Work left unbilled is to be billed."""

    does = Action.KEEP_MONEY

    def post(self, request: HttpRequest, visit_pk: int) -> HttpResponseBase:
        hand = Hand(self.seat.user, self.now, "To be billed after all")
        bill_after_all(visit=self.fetch(Visit, visit_pk, "farm", "business"), hand=hand)
        messages.success(request, "It is ready to be billed again.")
        return redirect("bill_ready")


class LateWorkPage(ScopedPage):
    """What changed of a visit since it was billed, and what it comes to; drafted on the office's word."""

    does = Action.KEEP_MONEY
    template = "invoicing/bill_late.html"

    def get(self, request: HttpRequest, visit_pk: int) -> HttpResponse:
        return self._show(self._visit(visit_pk), ReasonForm(initial={"reason": "Put down after the bill"}))

    def post(self, request: HttpRequest, visit_pk: int) -> HttpResponseBase:
        visit, form = self._visit(visit_pk), ReasonForm(request.POST)
        if not form.is_valid():
            return self._show(visit, form, 400)
        hand = Hand(self.seat.user, self.now, form.cleaned_data["reason"])
        made = draft_late_work(visit=visit, hand=hand)
        messages.success(request, "Drafted. Nothing is issued yet: look at it first.")
        return redirect("invoice", made[0].pk) if made else redirect("bill_ready")

    def _visit(self, pk: int) -> Visit:
        return self.fetch(Visit, pk, "farm__business", "business")

    def _show(self, visit: Visit, form: ReasonForm, status: int = 200) -> HttpResponse:
        difference = bill_difference(visit)
        return self.show(
            {
                "visit": visit,
                "difference": difference,
                "work": price_difference(difference) if difference.added else None,
                "form": form,
            },
            status=status,
        )


class IssueAllPage(ScopedPage):
    """Every draft of a month or visit that is over is issued in the background, one after the other."""

    does = Action.KEEP_MONEY
    template = "web/confirm.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        rows = self._rows()
        sums = " and ".join(money(one.gross, one.currency) for one in sums_of(rows))
        count = rows.count()
        words = [
            f"{count} {'draft gets its number' if count == 1 else 'drafts get their numbers'}, {sums} in all.",
            "Issued, they cannot be changed. What cannot be issued stays a draft; its page says why.",
            "Credit notes and months that still run are left out.",
        ]
        return self.show(
            {
                "question": f"Issue {count} {'draft' if count == 1 else 'drafts'} at once?",
                "consequences": words,
                "do_label": "Issue them",
                "keep_label": "Back to the drafts",
                "keep_url": reverse("invoice_drafts"),
                "form": IssueAllForm(),
            }
        )

    def post(self, request: HttpRequest) -> HttpResponseBase:
        send = "send" in request.POST
        many = start_issue_run(invoices=self._rows(), by=self.seat.user, send=send)
        messages.success(request, f"{many} asked for. They leave the list of drafts as they are issued.")
        return redirect("invoice_drafts")

    def _rows(self) -> InvoiceQuerySet:
        return ready_drafts(self.scope, local_day(self.now, self.seat.business.zone))

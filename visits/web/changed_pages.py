"""Something changed in the week: what, and the few things to know of it."""

from datetime import date

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect
from django.urls import reverse

from trimops.accounts.actions import Action
from trimops.kernel.clock import monday_of
from trimops.web.page_rates import Cost
from trimops.web.scoped_page import ScopedPage
from visits.domain.what_happened import WhatHappened
from visits.services.replan_week import replan_week
from visits.web.changed_forms import FORMS, Asked, ChangedForm


class WeekChangedPage(ScopedPage):
    """What happened? One button each."""

    does = Action.PLAN_WEEKS
    template = "visits/week_changed.html"

    def get(self, request: HttpRequest, week: str) -> HttpResponse:
        return self.show({"monday": monday_in(week), "choices": list(WhatHappened)})


class WhatChangedPage(ScopedPage):
    """One thing that happened: its fields; then the week is planned again."""

    does = Action.PLAN_WEEKS
    costs = {"post": Cost.PLAN}
    template = "visits/week_changed_what.html"

    def get(self, request: HttpRequest, week: str, what: str) -> HttpResponse:
        happened, asked = self._question(week, what)
        return self._show(happened, FORMS[happened](asked=asked), asked, 200)

    def post(self, request: HttpRequest, week: str, what: str) -> HttpResponseBase:
        happened, asked = self._question(week, what)
        form = FORMS[happened](request.POST, asked=asked)
        if not form.is_valid():
            return self._show(happened, form, asked, 400)
        plan = replan_week(
            business=self.seat.business,
            monday=asked.monday,
            happening=form.happening(),
            at=self.now,
            by=self.seat.user,
        )
        if plan is None:
            messages.success(request, "It is noted. Nothing is left to plan in this week.")
            return redirect(f"{reverse('this_week')}?week={asked.monday.isoformat()}")
        return redirect("replan", plan.pk)

    def _question(self, week: str, what: str) -> tuple[WhatHappened, Asked]:
        try:
            happened = WhatHappened(what)
        except ValueError:
            raise Http404 from None
        return happened, Asked(self.seat.business, monday_in(week), self.now)

    def _show(self, what: WhatHappened, form: ChangedForm, asked: Asked, status: int) -> HttpResponse:
        none_there = "visit" in form.fields and not form.fields["visit"].queryset.exists()  # type: ignore[attr-defined]
        words = {"what": what, "monday": asked.monday, "none_there": none_there}
        return self.show({"form": form, **words}, status=status)


def monday_in(week: str) -> date:
    """The Monday of the week that an address names; 404 where it names none."""
    try:
        return monday_of(date.fromisoformat(week))
    except ValueError:
        raise Http404 from None

"""The steps of a visit: each a form of its own that calls one service."""

from typing import ClassVar

from django import forms
from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase, QueryDict
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.web.scoped_page import ScopedPage
from visits.domain.cautions import BEFORE_THE_FIRST_COW
from visits.models import Visit
from visits.services.call_off_visit import call_off_visit
from visits.services.confirm_visit import confirm_visit
from visits.services.finish_visit import SignOff, finish_visit
from visits.services.plan_visit import plan_visit
from visits.services.put_off_visit import put_off_visit
from visits.services.start_visit import start_visit
from visits.services.tell_hour import tell_hour
from visits.web.forms import FinishForm, PlanVisitForm, ReasonForm, StartForm


class VisitStep(ScopedPage):
    """One step: a question, a form, a button."""

    does = Action.KEEP_VISITS
    template = "visits/step.html"
    question: ClassVar[str] = ""
    button: ClassVar[str] = ""
    said: ClassVar[str] = ""
    lines: ClassVar[tuple[str, ...]] = ()

    def make_form(self, visit: Visit, data: QueryDict | None = None) -> forms.Form:
        raise NotImplementedError

    def take(self, visit: Visit, form: forms.Form) -> None:
        raise NotImplementedError

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        visit = self.fetch(Visit, pk, "farm", "business")
        return self._show(visit, self.make_form(visit), 200)

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        visit = self.fetch(Visit, pk, "farm", "business")
        form = self.make_form(visit, request.POST)
        if not form.is_valid():
            return self._show(visit, form, 400)
        self.take(visit, form)
        messages.success(request, self.said)
        return redirect("visit", visit.pk)

    def _show(self, visit: Visit, form: forms.Form, status: int) -> HttpResponse:
        words = {"question": self.question, "button": self.button, "lines": self.lines}
        return self.show({"visit": visit, "farm": visit.farm, "form": form, **words}, status=status)


class PlanVisitPage(VisitStep):
    question, button, said = "When, and which van?", "Plan the visit", "The visit has its hour."

    def make_form(self, visit: Visit, data: QueryDict | None = None) -> forms.Form:
        return PlanVisitForm(
            data, scope=self.scope, initial={"van": visit.van_id, "start": visit.planned_start}
        )

    def take(self, visit: Visit, form: forms.Form) -> None:
        data = form.cleaned_data
        plan_visit(visit=visit, van=data["van"], start=data["start"], at=self.now, by=self.seat.user)


class ConfirmVisitPage(VisitStep):
    question, button, said = (
        "Has the farm said yes to the hour?",
        "Yes, it is confirmed",
        "The visit is confirmed.",
    )
    lines = ("A confirmed visit keeps its van and hour when the week is planned anew.",)

    def make_form(self, visit: Visit, data: QueryDict | None = None) -> forms.Form:
        return forms.Form(data)

    def take(self, visit: Visit, form: forms.Form) -> None:
        confirm_visit(visit=visit, at=self.now, by=self.seat.user)


class TellHourPage(VisitStep):
    question, button = "Has the farm been told its hour?", "Yes, they know"
    said = "The farm counts on this hour now."
    lines = ("Planning the week again then pays for moving it; told is less than confirmed.",)

    def make_form(self, visit: Visit, data: QueryDict | None = None) -> forms.Form:
        return forms.Form(data)

    def take(self, visit: Visit, form: forms.Form) -> None:
        tell_hour(visit=visit, at=self.now, by=self.seat.user)


class PutOffVisitPage(VisitStep):
    question, button = "Why is the visit put off?", "Put it off"
    said = "The visit is back among the wanted ones."

    def make_form(self, visit: Visit, data: QueryDict | None = None) -> forms.Form:
        return ReasonForm(data)

    def take(self, visit: Visit, form: forms.Form) -> None:
        put_off_visit(visit=visit, because=form.cleaned_data["because"], at=self.now, by=self.seat.user)


class CallOffVisitPage(VisitStep):
    question, button, said = "Why is the visit called off?", "Call it off", "The visit is called off."
    lines = ("Re-checks that it was to see to are gathered into another visit.",)

    def make_form(self, visit: Visit, data: QueryDict | None = None) -> forms.Form:
        return ReasonForm(data)

    def take(self, visit: Visit, form: forms.Form) -> None:
        call_off_visit(visit=visit, because=form.cleaned_data["because"], at=self.now, by=self.seat.user)


class StartVisitPage(VisitStep):
    does = Action.WORK_AT_CRUSH
    question, button, said = "Before the first cow", "Start the visit", "The visit is under way."
    lines = BEFORE_THE_FIRST_COW

    def make_form(self, visit: Visit, data: QueryDict | None = None) -> forms.Form:
        return StartForm(data)

    def take(self, visit: Visit, form: forms.Form) -> None:
        start_visit(visit=visit, checked=form.cleaned_data["checked"], at=self.now, by=self.seat.user)


class FinishVisitPage(VisitStep):
    does = Action.WORK_AT_CRUSH
    question, button = "Is the last cow done and the kit clean?", "Finish the visit"
    said = "The visit is finished: its re-checks are booked and its invoice is drafted."

    def make_form(self, visit: Visit, data: QueryDict | None = None) -> forms.Form:
        return FinishForm(data)

    def take(self, visit: Visit, form: forms.Form) -> None:
        finish_visit(visit=visit, sign_off=SignOff(**form.cleaned_data), at=self.now, by=self.seat.user)

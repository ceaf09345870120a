"""Calendar addresses: who has one, making one, closing one."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase, QueryDict
from django.shortcuts import redirect
from django.urls import reverse

from trimops.accounts.actions import Action
from trimops.web.scoped_page import ScopedPage
from visits.models import CalendarAddress
from visits.services.make_calendar_address import make_calendar_address
from visits.services.revoke_calendar_address import revoke_calendar_address
from visits.web.calendar_form import CalendarForm


class CalendarPage(ScopedPage):
    does = Action.KEEP_CALENDARS
    template = "visits/calendar.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self._show(self._form())

    def post(self, request: HttpRequest) -> HttpResponse:
        form = self._form(request.POST)
        if not form.is_valid():
            return self._show(form, status=400)
        made = make_calendar_address(
            business=self.seat.business, wish=form.wish(), at=self.now, by=self.seat.user
        )
        address = request.build_absolute_uri(reverse("calendar_feed", args=[made.secret]))
        answer = self._show(self._form(), address)
        answer["Cache-Control"] = "private, no-store"  # because: the secret stands on it
        return answer

    def _form(self, data: QueryDict | None = None) -> CalendarForm:
        return CalendarForm(data, scope=self.scope, user=self.seat.user)

    def _show(self, form: CalendarForm, address: str = "", status: int = 200) -> HttpResponse:
        rows = CalendarAddress.objects.within(self.scope).filter(revoked_at__isnull=True)
        rows = rows.select_related("van", "farm", "trimmer")
        return self.show({"addresses": rows, "form": form, "new_address": address}, status=status)


class RevokeCalendarPage(ScopedPage):
    does = Action.KEEP_CALENDARS

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        revoke_calendar_address(address=self.fetch(CalendarAddress, pk), at=self.now)
        messages.success(request, "The address is closed; whoever used it sees nothing any more.")
        return redirect("calendar")

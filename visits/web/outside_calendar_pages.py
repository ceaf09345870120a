"""Calendars of the trimmer's own that keep a van in."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.web.scoped_page import ScopedPage
from visits.models import OutsideCalendar, Van
from visits.selectors.outside_calendars import calendar_lines
from visits.services.add_outside_calendar import CalendarRefused, add_outside_calendar
from visits.services.look_at_calendars import ask_for_fetch
from visits.services.remove_outside_calendar import remove_outside_calendar
from visits.web.outside_calendar_form import OutsideCalendarForm


class VanCalendarsPage(ScopedPage):
    does = Action.KEEP_VANS
    template = "visits/van_calendars.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        return self._show(self.fetch(Van, pk), OutsideCalendarForm())

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        van = self.fetch(Van, pk, "business")
        form = OutsideCalendarForm(request.POST, request.FILES)
        if not form.is_valid():
            return self._show(van, form, status=400)
        try:
            row = add_outside_calendar(van=van, wish=form.wish(), at=self.now, by=self.seat.user)
        except CalendarRefused as refused:
            form.add_error(refused.field, refused.message)
            return self._show(van, form, status=400)
        words = "is being read: look here in a moment" if row.url else "is read"
        messages.success(request, f"{row.name} {words}. Plan the week again if it is planned already.")
        return redirect("van_calendars", pk=van.pk)

    def _show(self, van: Van, form: OutsideCalendarForm, status: int = 200) -> HttpResponse:
        return self.show({"van": van, "lines": calendar_lines(van, self.now), "form": form}, status=status)


class ReadCalendarPage(ScopedPage):
    """It is read again at once."""

    does = Action.KEEP_VANS

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        row = self.fetch(OutsideCalendar, pk)
        ask_for_fetch(business_id=row.business_id, calendar_id=row.pk)
        messages.success(request, f"{row.name} is being read again: look here in a moment.")
        return redirect("van_calendars", pk=row.van_id)


class RemoveCalendarPage(ScopedPage):
    does = Action.KEEP_VANS

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        row = self.fetch(OutsideCalendar, pk)
        remove_outside_calendar(calendar=row)
        messages.success(request, f"{row.name} keeps the van in no more.")
        return redirect("van_calendars", pk=row.van_id)

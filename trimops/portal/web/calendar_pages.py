"""The farm's visits in a phone's calendar: its secret addresses, made and closed by the farm."""

from django import forms
from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect
from django.urls import reverse

from trimops.portal.web.client_page import ClientPage
from visits.models import CalendarAddress
from visits.services.make_calendar_address import FeedWish, make_calendar_address
from visits.services.revoke_calendar_address import revoke_calendar_address
from visits.web.calendar_form import RINGS


class PhoneForm(forms.Form):
    name = forms.CharField(label="Whose phone is it", max_length=80)
    alarm_minutes = forms.TypedChoiceField(
        label="Ring before each visit", choices=RINGS, coerce=int, empty_value=None, required=False
    )


class PortalCalendarPage(ClientPage):
    template = "portal/calendar.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self._show(PhoneForm(initial={"name": self.seat.user.name}))

    def post(self, request: HttpRequest) -> HttpResponse:
        form = PhoneForm(request.POST)
        if not form.is_valid():
            return self._show(form, status=400)
        made = make_calendar_address(
            business=self.seat.business,
            wish=FeedWish(form.cleaned_data["name"], self.farm(), form.cleaned_data["alarm_minutes"]),
            at=self.now,
            by=self.seat.user,
        )
        address = request.build_absolute_uri(reverse("calendar_feed", args=[made.secret]))
        answer = self._show(PhoneForm(), address)
        answer["Cache-Control"] = "private, no-store"  # because: the secret stands on it
        return answer

    def _show(self, form: PhoneForm, address: str = "", status: int = 200) -> HttpResponse:
        rows = CalendarAddress.objects.within(self.scope).filter(revoked_at__isnull=True)
        return self.show(
            {"farm": self.farm(), "addresses": rows, "form": form, "new_address": address}, status=status
        )


class PortalCalendarClosePage(ClientPage):
    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        revoke_calendar_address(address=self.fetch(CalendarAddress, pk), at=self.now)
        messages.success(request, "The address is closed; whoever used it sees nothing any more.")
        return redirect("portal_calendar")

"""Signing out elsewhere: a phone that was lost, a browser in somebody's office."""

from allauth.usersessions.models import UserSession
from allauth.usersessions.views import ListUserSessionsView
from django.contrib import messages
from django.http import HttpRequest, HttpResponseBase
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.accounts.services.end_sessions import end_session
from trimops.accounts.web.proof import proof_wanted
from trimops.kernel.errors import NotFound
from trimops.watch.security_lines import note_security
from trimops.web.scoped_page import ScopedPage


class DevicesPage(ListUserSessionsView):  # type: ignore[misc]
    """The library's list; signing out everywhere else asks for the password first, if it was not given just now."""

    def post(self, request: HttpRequest, *args: object, **kwargs: object) -> HttpResponseBase:
        if way := proof_wanted(request):
            return way
        note_security("signed_out_elsewhere", whom="all but this one")
        answer: HttpResponseBase = super().post(request, *args, **kwargs)
        return answer


class DeviceSignOutPage(ScopedPage):
    """A button beside each place that one is signed in at; asks for the password first, as above."""

    does = Action.COME_IN

    def post(self, request: HttpRequest) -> HttpResponseBase:
        if way := proof_wanted(request):
            return way
        said = request.POST.get("device", "")
        if said.isdecimal() and len(said) < 19:
            place = UserSession.objects.filter(user=self.seat.user, pk=int(said)).first()
            if place is None:
                raise NotFound("There is nothing at this address.")
            end_session(place=place)
            note_security("signed_out_elsewhere", whom="one")
            messages.success(request, "Signed out there.")
        return redirect("usersessions_list")

"""Asking somebody of a farm in."""

from django import forms
from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect
from django.urls import reverse

from farms.models import Farm, FarmAccess
from farms.services.invite_farm_client import FarmGuest, invite_farm_client
from trimops.accounts.roles import Role
from trimops.accounts.services.invite_person import invitation_token, mail_invitation
from trimops.web.scoped_page import ScopedPage

HOSTS = frozenset({Role.OWNER, Role.OFFICE})


class FarmGuestForm(forms.Form):
    name = forms.CharField(max_length=120)
    email = forms.EmailField(label="Email")


class FarmClientsPage(ScopedPage):
    """Who of the farm sees it, and asking one more in."""

    roles = HOSTS
    template = "farms/farm_clients.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        return self._show(self.fetch(Farm, pk), FarmGuestForm())

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        farm = self.fetch(Farm, pk, "business")
        form = FarmGuestForm(request.POST)
        if not form.is_valid():
            return self._show(farm, form, 400)
        guest = FarmGuest(**form.cleaned_data)
        membership = invite_farm_client(farm=farm, guest=guest, at=self.now, by=self.seat.user)
        if membership.joined_at is None:
            address = request.build_absolute_uri(reverse("invitation", args=[invitation_token(membership)]))
            mail_invitation(membership=membership, address=address)
        messages.success(request, f"{membership.user.name} may see {farm.name}.")
        return redirect("farm_clients", farm.pk)

    def _show(self, farm: Farm, form: FarmGuestForm, status: int = 200) -> HttpResponse:
        rows = FarmAccess.objects.within(self.scope).filter(farm=farm, membership__ended_at__isnull=True)
        return self.show(
            {"farm": farm, "form": form, "accesses": rows.select_related("membership__user")}, status=status
        )

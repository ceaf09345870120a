"""The people of a farm: asking somebody in, what each may do there, and taking one out."""

from django import forms
from django.contrib import messages
from django.db import transaction
from django.http import HttpRequest, HttpResponse, HttpResponseBase, QueryDict
from django.shortcuts import redirect
from django.urls import reverse

from farms.models import Farm, FarmAccess
from farms.selectors.seat import rights_of
from farms.services.close_farm_access import close_farm_access
from farms.services.give_farm_rights import give_farm_rights
from farms.services.invite_farm_client import FarmGuest, invite_farm_client
from trimops.accounts.actions import Action
from trimops.accounts.roles import FarmRight
from trimops.accounts.services.invite_person import invitation_token, mail_invitation
from trimops.web.scoped_page import ScopedPage
from trimops.web.seen_form import SeenForm

USUAL = frozenset({FarmRight.READS_REPORTS, FarmRight.EDITS_DRAFT, FarmRight.ASKS_VISITS})


class RightsForm(forms.Form):
    rights = forms.MultipleChoiceField(
        label="May do",
        choices=FarmRight.choices,
        required=False,
        widget=forms.CheckboxSelectMultiple,
        help_text="Everybody asked in sees the farm's cows and the visits to come.",
    )

    def clean_rights(self) -> frozenset[FarmRight]:
        return frozenset(FarmRight(value) for value in self.cleaned_data["rights"])


class ChangedRightsForm(SeenForm, RightsForm):
    """Of somebody who has some already."""


class FarmGuestForm(RightsForm):
    name = forms.CharField(max_length=120)
    email = forms.EmailField(label="Email")
    field_order = ["name", "email", "rights"]


class FarmClientsPage(ScopedPage):
    """Who of the farm sees it and what each may do; asking one more in."""

    does = Action.LET_IN_CLIENTS
    template = "farms/farm_clients.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        return self._show(self.fetch(Farm, pk), FarmGuestForm(initial={"rights": list(USUAL)}))

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        farm = self.fetch(Farm, pk, "business")
        form = FarmGuestForm(request.POST)
        if not form.is_valid():
            return self._show(farm, form, 400)
        guest = FarmGuest(**form.cleaned_data)
        membership = invite_farm_client(farm=farm, guest=guest, at=self.now, by=self.seat.user)
        if membership.joined_at is None:
            address = request.build_absolute_uri(reverse("invitation", args=[invitation_token(membership)]))
            mail_invitation(membership=membership, address=address, at=self.now)
        messages.success(request, f"{membership.user.name} may see {farm.name}.")
        return redirect("farm_clients", farm.pk)

    def _show(self, farm: Farm, form: FarmGuestForm, status: int = 200) -> HttpResponse:
        rows = FarmAccess.objects.within(self.scope).filter(farm=farm, membership__ended_at__isnull=True)
        people = [(access, _in_words(access)) for access in rows.select_related("membership__user")]
        return self.show({"farm": farm, "form": form, "people": people}, status=status)


class FarmClientPage(ScopedPage):
    """What one person may do at one farm; or that they see it no more."""

    does = Action.LET_IN_CLIENTS
    template = "farms/farm_client.html"

    def get(self, request: HttpRequest, farm_pk: int, pk: int) -> HttpResponse:
        access = self._access(farm_pk, pk)
        return self._show(access, self._form(access))

    @transaction.atomic
    def post(self, request: HttpRequest, farm_pk: int, pk: int) -> HttpResponseBase:
        access = self._access(farm_pk, pk)
        if "leaves" in request.POST:
            close_farm_access(access=access, at=self.now)
            messages.success(request, f"{access.membership.user} sees {access.farm} no more.")
            return redirect("farm_clients", access.farm_id)
        form = self._form(access.locked(), request.POST)
        if not form.is_valid():
            return self._show(access, form, form.refused_as)
        give_farm_rights(access=access, rights=form.cleaned_data["rights"])
        messages.success(request, f"What {access.membership.user} may do at {access.farm} is kept.")
        return redirect("farm_clients", access.farm_id)

    def _access(self, farm_pk: int, pk: int) -> FarmAccess:
        rows = FarmAccess.objects.filter(farm=self.fetch(Farm, farm_pk), membership__ended_at__isnull=True)
        return self.fetch_from(rows.select_related("farm", "membership__user"), pk)

    def _form(self, access: FarmAccess, data: QueryDict | None = None) -> ChangedRightsForm:
        return ChangedRightsForm(data, initial={"rights": sorted(rights_of(access))})

    def _show(self, access: FarmAccess, form: ChangedRightsForm, status: int = 200) -> HttpResponse:
        return self.show({"access": access, "farm": access.farm, "form": form}, status=status)


def _in_words(access: FarmAccess) -> str:
    """What the person may do, in one line."""
    held = rights_of(access)
    words = [right.label for right in FarmRight if right in held]
    return "; ".join([words[0], *(word[0].lower() + word[1:] for word in words[1:])] if words else [])

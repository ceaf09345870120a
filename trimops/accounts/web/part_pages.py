"""The part of somebody who works in the business, and an invitation that nobody took up yet."""

from django import forms
from django.contrib import messages
from django.db import transaction
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.accounts.models import Membership
from trimops.accounts.roles import STAFF, Role
from trimops.accounts.services.change_role import change_role
from trimops.accounts.services.invite_person import Guest, invite_person
from trimops.accounts.web.invitation_mail import send_invitation
from trimops.kernel.errors import NotFound
from trimops.web.scoped_page import ScopedPage
from trimops.web.seen_form import SeenForm

WORDS = {
    Role.OWNER: "Owner: everything, also people, papers and locked books",
    Role.TRIMMER: "Trimmer: the work at the crush, vans and knives; no money",
    Role.OFFICE: "Office: the diary and the money; not the crush",
}


class PartForm(SeenForm, forms.Form):
    role = forms.ChoiceField(
        label="Their part",
        choices=[(role.value, words) for role, words in WORDS.items()],
        widget=forms.RadioSelect,
    )


class StaffPage(ScopedPage):
    """A page of somebody who works in the business, or is asked to."""

    does = Action.KEEP_PEOPLE

    def member(self, pk: int, *, has_joined: bool, is_locked: bool = False) -> Membership:
        found = Membership.objects.filter(
            business=self.seat.business,
            role__in=STAFF,
            ended_at__isnull=True,
            joined_at__isnull=not has_joined,
        )
        if is_locked:
            found = found.select_for_update(of=("self",), no_key=True)
        member = found.select_related("user").filter(pk=pk).first()
        if member is None:
            raise NotFound("There is nothing at this address.")
        return member


class PartPage(StaffPage):
    template = "accounts/part.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        member = self.member(pk, has_joined=True)
        return self.show({"member": member, "form": PartForm(initial={"role": member.role})})

    @transaction.atomic
    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        member = self.member(pk, has_joined=True, is_locked=True)
        form = PartForm(request.POST, initial={"role": member.role})
        if not form.is_valid():
            return self.show({"member": member, "form": form}, status=form.refused_as)
        changed = change_role(membership=member, role=Role(form.cleaned_data["role"]))
        messages.success(request, f"{member.user.name}: {changed.get_role_display().lower()} from now on.")
        return redirect("people" if self._is_still_owner(changed) else "home")

    def _is_still_owner(self, changed: Membership) -> bool:
        return changed.pk != self.seat.membership.pk or changed.role == Role.OWNER


class InvitationAgainPage(StaffPage):
    """A button beside an invitation: the old link dies, a new one goes out."""

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        member = self.member(pk, has_joined=False)
        guest = Guest(member.user.email, member.user.name, Role(member.role))
        renewed = invite_person(business=self.seat.business, guest=guest, at=self.now, by=self.seat.user)
        send_invitation(request, renewed, self.now)
        messages.success(request, f"A new invitation is on its way to {member.user.email}.")
        return redirect("people")

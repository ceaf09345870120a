"""Who is in the business, asking somebody in, and coming in by the link."""

from django import forms
from django.contrib import messages
from django.contrib.auth import login
from django.core.exceptions import ValidationError
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.decorators import method_decorator
from django.views import View
from django.views.decorators.cache import never_cache

from trimops.accounts.models import Membership
from trimops.accounts.roles import STAFF, Role
from trimops.accounts.services.accept_invitation import accept_invitation
from trimops.accounts.services.end_membership import end_membership
from trimops.accounts.services.invite_person import (
    Guest,
    InvitationSpent,
    invitation_token,
    invite_person,
    mail_invitation,
    membership_of_token,
)
from trimops.kernel.errors import NotFound
from trimops.web.scoped_page import ScopedPage

OWNERS = frozenset({Role.OWNER})
BACKEND = "allauth.account.auth_backends.AuthenticationBackend"


class GuestForm(forms.Form):
    name = forms.CharField(max_length=120)
    email = forms.EmailField(label="Email")
    role = forms.ChoiceField(
        label="As",
        choices=[(role.value, role.label) for role in Role if role in STAFF],
        initial=Role.TRIMMER.value,
    )


class PasswordForm(forms.Form):
    password = forms.CharField(
        widget=forms.PasswordInput(attrs={"autocomplete": "new-password"}),
        help_text="At least 10 characters.",
    )


class PeoplePage(ScopedPage):
    roles = OWNERS
    template = "accounts/people.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self._show(GuestForm())

    def post(self, request: HttpRequest) -> HttpResponseBase:
        form = GuestForm(request.POST)
        if not form.is_valid():
            return self._show(form, 400)
        data = form.cleaned_data
        guest = Guest(data["email"], data["name"], Role(data["role"]))
        membership = invite_person(business=self.seat.business, guest=guest, at=self.now, by=self.seat.user)
        address = request.build_absolute_uri(reverse("invitation", args=[invitation_token(membership)]))
        mail_invitation(membership=membership, address=address, at=self.now)
        messages.success(request, f"The invitation is on its way to {membership.user.email}.")
        return redirect("people")

    def _show(self, form: GuestForm, status: int = 200) -> HttpResponse:
        people = Membership.objects.filter(business=self.seat.business, ended_at__isnull=True)
        rows = people.select_related("user").order_by("user__name")
        return self.show({"people": rows, "form": form}, status=status)


class EndMembershipPage(ScopedPage):
    roles = OWNERS
    template = "web/confirm.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        membership = self._membership(pk)
        return self.show(
            {
                "question": f"Does {membership.user} leave {self.seat.business}?",
                "consequences": [
                    "From now on they see nothing of the business.",
                    "What they did keeps their name.",
                ],
                "do_label": "Yes, they leave",
                "keep_url": reverse("people"),
            }
        )

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        end_membership(membership=self._membership(pk), at=self.now)
        messages.success(request, "They are no longer in the business.")
        return redirect("people")

    def _membership(self, pk: int) -> Membership:
        found = Membership.objects.filter(business=self.seat.business, pk=pk, ended_at__isnull=True)
        membership = found.select_related("user").first()
        if membership is None:
            raise NotFound("There is nothing at this address.")
        return membership


@method_decorator(never_cache, name="dispatch")
class InvitationPage(View):
    """Open to strangers: the link itself is the proof."""

    def get(self, request: HttpRequest, token: str) -> HttpResponse:
        return self._show(request, membership_of_token(token), PasswordForm())

    def post(self, request: HttpRequest, token: str) -> HttpResponseBase:
        membership = membership_of_token(token)
        form = PasswordForm(request.POST)
        if not form.is_valid():
            return self._show(request, membership, form, 400)
        try:
            joined = accept_invitation(
                membership=membership, password=form.cleaned_data["password"], at=timezone.now()
            )
        except (ValidationError, InvitationSpent) as fault:
            form.add_error("password", getattr(fault, "messages", None) or str(fault))
            return self._show(request, membership, form, 400)
        login(request, joined.user, backend=BACKEND)
        return redirect("home")

    def _show(
        self, request: HttpRequest, membership: Membership, form: PasswordForm, status: int = 200
    ) -> HttpResponse:
        return render(
            request, "accounts/invitation.html", {"membership": membership, "form": form}, status=status
        )

"""Who is in the business, asking somebody in, and coming in by the link."""

from allauth.account.adapter import get_adapter
from allauth.account.utils import perform_login
from django import forms
from django.contrib import messages
from django.core.exceptions import ValidationError
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.decorators import method_decorator
from django.views import View
from django.views.decorators.cache import never_cache

from trimops.accounts.actions import Action
from trimops.accounts.models import Membership
from trimops.accounts.roles import STAFF, Role
from trimops.accounts.services.accept_invitation import accept_invitation
from trimops.accounts.services.end_membership import end_membership
from trimops.accounts.services.invite_person import (
    Guest,
    InvitationSpent,
    invite_person,
    membership_of_token,
)
from trimops.accounts.web.invitation_mail import send_invitation
from trimops.kernel.errors import NotFound
from trimops.web.scoped_page import ScopedPage


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
        # because: a password is taken as it was typed (ASVS 6.2.8)
        strip=False,
        widget=forms.PasswordInput(attrs={"autocomplete": "new-password"}),
        help_text="At least 10 characters; 15 or more are better, a few words of your own for instance.",
    )


class PeoplePage(ScopedPage):
    does = Action.KEEP_PEOPLE
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
        send_invitation(request, membership, self.now)
        messages.success(request, f"The invitation is on its way to {membership.user.email}.")
        return redirect("people")

    def _show(self, form: GuestForm, status: int = 200) -> HttpResponse:
        people = Membership.objects.filter(business=self.seat.business, ended_at__isnull=True)
        rows = people.select_related("user").order_by("user__name")
        context = {
            "people": rows,
            "form": form,
            "staff": STAFF,
            "works": sum(m.is_current and m.role in STAFF for m in rows),
        }
        return self.show(context, status=status)


class EndMembershipPage(ScopedPage):
    does = Action.KEEP_PEOPLE
    template = "web/confirm.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        membership = self._membership(pk)
        if membership.joined_at is None:
            return self.show(
                {
                    "question": f"Withdraw the invitation of {membership.user}?",
                    "consequences": ["The link in their mail lets nobody in any more."],
                    "do_label": "Withdraw it",
                    "keep_url": reverse("people"),
                }
            )
        return self.show(
            {
                "question": f"Does {membership.user} leave {self.seat.business}?",
                "consequences": [
                    "From now on they and their programs see nothing of the business.",
                    "What they did keeps their name.",
                ],
                "do_label": "Yes, they leave",
                "keep_url": reverse("people"),
            }
        )

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        ended = end_membership(membership=self._membership(pk), at=self.now)
        is_here = ended.joined_at is not None
        messages.success(request, "They are no longer in the business." if is_here else "It is withdrawn.")
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
        password = form.cleaned_data["password"]
        if membership.user.has_usable_password():
            # because: here, too, somebody's password is tried, and no oftener than where one signs in
            get_adapter(request).reauthenticate(membership.user, password)
        try:
            joined = accept_invitation(membership=membership, password=password, at=timezone.now())
        except (ValidationError, InvitationSpent) as fault:
            form.add_error("password", getattr(fault, "messages", None) or str(fault))
            return self._show(request, membership, form, 400)
        # because: the library asks for the second step of who has one, and notes where somebody is signed in
        answer: HttpResponse = perform_login(request, joined.user, redirect_url=reverse("home"))
        return answer

    def _show(
        self, request: HttpRequest, membership: Membership, form: PasswordForm, status: int = 200
    ) -> HttpResponse:
        return render(
            request, "accounts/invitation.html", {"membership": membership, "form": form}, status=status
        )

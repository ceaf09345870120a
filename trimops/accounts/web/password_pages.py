"""A new password, and what becomes of the programs that came in as its person (beside ASVS 7.4.3)."""

from allauth.account.forms import ChangePasswordForm
from allauth.account.views import PasswordChangeView, PasswordResetFromKeyView
from django import forms
from django.http import HttpResponse
from django.utils import timezone

from trimops.accounts.models import User
from trimops.accounts.selectors.tokens import live_tokens
from trimops.accounts.services.revoke_token import revoke_tokens_of_person
from trimops.watch.security_lines import note_security


class ChangePassword(ChangePasswordForm):  # type: ignore[misc]
    """Asks what shall become of the person's programs, where they have any."""

    end_programs = forms.BooleanField(label="End the tokens of my programs too", required=False)

    def __init__(self, *args: object, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)
        count = live_tokens(self.user, timezone.now())
        if not count:
            del self.fields["end_programs"]
            return
        self.fields["end_programs"].help_text = (
            f"{count} of yours let{'s' if count == 1 else ''} a program in as you, whatever your password is. "
            "Tick this where somebody may have seen your password; each program then needs a new token."
        )


class ChangePasswordPage(PasswordChangeView):  # type: ignore[misc]
    """The library's, with the question for programs."""

    form_class = ChangePassword

    def form_valid(self, form: ChangePassword) -> HttpResponse:
        # because: should anything fail in between, rather the programs stay outside than a stranger in
        if form.cleaned_data.get("end_programs"):
            _end_programs(form.user)
        answer: HttpResponse = super().form_valid(form)
        return answer


class NewPasswordPage(PasswordResetFromKeyView):  # type: ignore[misc]
    """The library's, behind the link in a mail: who needs it may have been robbed, so all programs stay outside."""

    def form_valid(self, form: forms.Form) -> HttpResponse:
        _end_programs(self.reset_user)
        answer: HttpResponse = super().form_valid(form)
        return answer


def _end_programs(user: User) -> None:
    ended = revoke_tokens_of_person(user=user, at=timezone.now())
    if ended:
        note_security("token_revoked", by=user.pk, programs=ended)

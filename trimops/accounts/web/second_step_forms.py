"""The forms of the sign-in library in our words."""

from allauth.mfa.base.forms import AuthenticateForm, ReauthenticateForm
from allauth.mfa.totp.forms import ActivateTOTPForm
from allauth.mfa.webauthn.forms import (
    AddWebAuthnForm,
    EditWebAuthnForm,
    LoginWebAuthnForm,
    ReauthenticateWebAuthnForm,
)
from django import forms

from trimops.watch.security_lines import note_security


class Watched(forms.Form):
    """A wrong code or passkey is told to the log."""

    def full_clean(self) -> None:
        super().full_clean()
        if self.is_bound and self.errors:
            person = getattr(self, "user", None)
            note_security("second_step_failed", by=person.pk if person else None, form=type(self).__name__)


class AddPasskey(AddWebAuthnForm):  # type: ignore[misc]
    def __init__(self, *args: object, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)
        self.fields["name"].label = "What it is called"
        self.fields["name"].help_text = "The device it is in, for instance: my phone."
        self.fields["passwordless"].label = "It signs me in by itself, without the password"
        self.fields["passwordless"].initial = True
        self.fields["passwordless"].help_text = "Your finger, your face or the device's number opens it."


class EditPasskey(EditWebAuthnForm):  # type: ignore[misc]
    def __init__(self, *args: object, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)
        self.fields["name"].label = "What it is called"


class SetUpApp(ActivateTOTPForm):  # type: ignore[misc]
    def __init__(self, *args: object, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)
        self.fields["code"].label = "The six figures"


class GiveCode(Watched, AuthenticateForm):  # type: ignore[misc]
    def __init__(self, *args: object, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        self.fields["code"].label = "Figures of the app, or a code on paper"


class GiveCodeAgain(Watched, ReauthenticateForm):  # type: ignore[misc]
    def __init__(self, *args: object, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        self.fields["code"].label = "Figures of the app, or a code on paper"


class ComeByPasskey(Watched, LoginWebAuthnForm):  # type: ignore[misc]
    """Signing in by the passkey alone."""


class ProveByPasskey(Watched, ReauthenticateWebAuthnForm):  # type: ignore[misc]
    """Showing it once more before something is changed."""

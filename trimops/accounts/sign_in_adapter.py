"""How the sign-in library behaves here: nobody signs up by themselves, people are invited."""

import hashlib
import time
from base64 import urlsafe_b64encode

from allauth.account import app_settings
from allauth.account.adapter import DefaultAccountAdapter
from allauth.account.internal.flows.login import get_authentication_records
from allauth.core.exceptions import ImmediateHttpResponse
from allauth.core.internal import ratelimit
from allauth.mfa.adapter import DefaultMFAAdapter
from allauth.mfa.models import Authenticator
from cryptography.fernet import Fernet, MultiFernet
from django.conf import settings
from django.contrib.sites.shortcuts import get_current_site
from django.core.cache import cache
from django.core.exceptions import ValidationError
from django.http import HttpRequest, HttpResponse
from django.utils import timezone

from trimops.accounts.models import User
from trimops.accounts.selectors.tokens import live_tokens
from trimops.accounts.services.tell_person import tell_person
from trimops.watch.security_lines import note_security
from trimops.web.client_address import client_address
from trimops.web.problem_pages import too_often_page

FAILED: dict[str, str] = {"app": "allauth.account", "action": "login_failed"}


class SignInAdapter(DefaultAccountAdapter):  # type: ignore[misc]
    """Sign-up is closed; an account begins with an invitation. Who guesses passwords hears how long to wait."""

    def is_open_for_signup(self, request: HttpRequest) -> bool:
        return False

    def pre_authenticate(self, request: HttpRequest, **credentials: object) -> None:
        """Counts a try before it is made, so that a hundred at once are no more than a hundred in turn."""
        try:
            super().pre_authenticate(request, **credentials)
        except ValidationError:
            wait = seconds_to_wait(request, self._get_login_attempts_cache_key(request, **credentials))
            words = (
                "Too many wrong passwords. This holds for the password alone: a passkey, or a new password by mail, "
                "still lets you in, and whoever is signed in stays so."
            )
            note_security("sign_in_held", by=_key_of(credentials))
            raise ImmediateHttpResponse(too_often_page(request, words, wait)) from None

    def authentication_failed(self, request: HttpRequest, **credentials: object) -> None:
        note_security("sign_in_failed", by=_key_of(credentials))

    def post_login(self, request: HttpRequest, user: User, **said: object) -> HttpResponse:
        note_security("sign_in", by=user.pk, ways=ways_in(request, user))
        answer: HttpResponse = super().post_login(request, user, **said)
        return answer

    def logout(self, request: HttpRequest) -> None:
        note_security("sign_out")
        super().logout(request)

    def send_notification_mail(
        self,
        template_prefix: str,
        user: User,
        context: dict[str, object] | None = None,
        email: str | None = None,
    ) -> None:
        """How somebody gets in was changed: they are told, by our own outbox where a business of theirs has one."""
        note_security("way_in_changed", by=user.pk, what=template_prefix.rpartition("/")[2])
        now = timezone.now()
        seen: dict[str, object] = {
            "timestamp": f"{now:%-d %B %Y at %H:%M} UTC",
            "ip": client_address(self.request) or "unknown",
            "current_site": get_current_site(self.request),
            "live_tokens": live_tokens(user, now),
        }
        seen["user_agent"] = self.get_http_user_agent(self.request)[:200]
        mail = self.render_mail(template_prefix, email or user.email, {**(context or {}), **seen})
        if tell_person(user=user, subject=str(mail.subject), body=str(mail.body), at=now) is None:
            mail.send()

    def reauthenticate(self, user: User, password: str) -> bool:
        # because: the library asks for an address that was proven by it; ours are proven by the invitation
        found = self.authenticate(self.request, email=user.email, password=password)
        return found is not None and found.pk == user.pk


def ways_in(request: HttpRequest, user: User) -> list[str]:
    """What the person showed, in turn: "password", "totp", "webauthn", "recovery_codes"; else what brought them."""
    shown = [each.get("type") or each["method"] for each in get_authentication_records(request, user)]
    by_link = "sesame" in getattr(user, "backend", "")
    return shown or ["link" if by_link else "invitation"]


def _key_of(credentials: dict[str, object]) -> int | None:
    """The person who was tried to be, if there is one of that address."""
    email = str(credentials.get("email") or "").strip().lower()
    return User.objects.filter(email=email).values_list("pk", flat=True).first()


def seconds_to_wait(request: HttpRequest, key: str) -> int:
    """Until the oldest of the tries that count is forgotten again; at least one."""
    now, waits = time.time(), [1.0]
    for rate in ratelimit.parse_rates(app_settings.RATE_LIMITS["login_failed"]):
        tries = cache.get(ratelimit.get_cache_key(request, **FAILED, rate=rate, key=key), [])
        if len(tries) >= rate.amount:
            waits.append(tries[-1] + rate.duration - now)
    return int(max(waits)) + 1


class SecondStepAdapter(DefaultMFAAdapter):  # type: ignore[misc]
    """What the second step keeps is sealed, so that a copy of the database alone passes nobody's."""

    def encrypt(self, text: str) -> str:
        return _seals().encrypt(text.encode()).decode()

    def decrypt(self, encrypted_text: str) -> str:
        return _seals().decrypt(encrypted_text.encode()).decode()

    def generate_authenticator_name(self, user: User, type: Authenticator.Type) -> str:
        return f"Passkey {Authenticator.objects.filter(user=user, type=type).count() + 1}"


def _seals() -> MultiFernet:
    """The signing key and those before it, as seals; the first one closes, any opens."""
    keys = [str(key) for key in (settings.SECRET_KEY, *settings.SECRET_KEY_FALLBACKS)]
    # because: the key is long and of chance, so that nothing has to stretch it
    sealed = [hashlib.sha256(f"trimops.second-step:{key}".encode()).digest() for key in keys]
    return MultiFernet([Fernet(urlsafe_b64encode(each)) for each in sealed])

"""Coming in without a password: a link is asked for, and a link is used."""

from secrets import token_hex
from urllib.parse import urlencode

from allauth.account.utils import perform_login
from allauth.core import ratelimit
from django import forms
from django.conf import settings
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.decorators import method_decorator
from django.utils.http import url_has_allowed_host_and_scheme
from django.views import View
from django.views.decorators.cache import never_cache

from trimops.accounts.models import User
from trimops.portal.services.mail_link import mail_link
from trimops.portal.services.make_link import LinkKind
from trimops.portal.services.spend_link import LinkSpent, owner_of_link, spend_link
from trimops.portal.web.farm_seat import sit_at

MARK = "__Host-come_in" if settings.IS_HTTPS else "come_in"
"""The cookie that says which asking for a link was the last one from this browser; it lives as long as the link."""
BACKEND = "sesame.backends.ModelBackend"


class ComeInForm(forms.Form):
    email = forms.EmailField(
        label="Your email address", widget=forms.EmailInput(attrs={"autocomplete": "email"})
    )


def our_own(request: HttpRequest) -> str:
    """The page of this site that the person wants to go on to, "" for anything else."""
    wanted = request.POST.get("next") or request.GET.get("next", "")
    ours = url_has_allowed_host_and_scheme(wanted, {request.get_host()}, require_https=request.is_secure())
    return wanted if ours else ""


@method_decorator(never_cache, name="dispatch")
class ComeInPage(View):
    """Open to all. It answers in the same words whether or not it knows the address."""

    def get(self, request: HttpRequest) -> HttpResponseBase:
        if request.user.is_authenticated:
            return redirect(our_own(request) or "home")
        return self._show(request, ComeInForm())

    def post(self, request: HttpRequest) -> HttpResponseBase:
        form = ComeInForm(request.POST)
        if not form.is_valid():
            return self._show(request, form, status=400)
        if not ratelimit.consume(request, action="come_in_from"):
            too_many: HttpResponse = ratelimit.respond_429(request)
            return too_many
        email, mark = form.cleaned_data["email"], ""
        if ratelimit.consume(request, action="come_in", key=email.lower()):
            mark = token_hex(16)
            mail_link(
                email=email,
                mark=mark,
                at=timezone.now(),
                address_of=lambda secret: self._address(request, secret),
                invitation_at=lambda token: request.build_absolute_uri(reverse("invitation", args=[token])),
            )
        answer = self._show(request, form, sent_to=email)
        if mark:
            seconds, secure = LinkKind.ASKED.seconds, settings.IS_HTTPS
            answer.set_signed_cookie(
                MARK, mark, max_age=seconds, secure=secure, httponly=True, samesite="Lax"
            )
        return answer

    def _address(self, request: HttpRequest, secret: str) -> str:
        address = request.build_absolute_uri(reverse("come_in_by_link", args=[secret]))
        wanted = our_own(request)
        return f"{address}?{urlencode({'next': wanted})}" if wanted else address

    def _show(
        self, request: HttpRequest, form: ComeInForm, *, sent_to: str = "", status: int = 200
    ) -> HttpResponse:
        context = {"form": form, "sent_to": sent_to, "next": our_own(request)}
        return render(request, "portal/come_in.html", context, status=status)


def _mark_of(request: HttpRequest) -> str:
    """Of the asking that this browser remembers; "" for none, or a cookie that is not ours."""
    return request.get_signed_cookie(MARK, default="", max_age=LinkKind.ASKED.seconds) or ""


@method_decorator(never_cache, name="dispatch")
class ComeInByLinkPage(View):
    """The link shows a button: programs that look into mail open links, and must not use it up."""

    def get(self, request: HttpRequest, token: str) -> HttpResponseBase:
        owner = owner_of_link(token, _mark_of(request))
        if isinstance(request.user, User) and owner in (None, request.user):
            return self._go_on(request, request.user)
        return self._show(request, owner)

    def post(self, request: HttpRequest, token: str) -> HttpResponseBase:
        try:
            user = spend_link(secret=token, mark=_mark_of(request), at=timezone.now())
        except LinkSpent:
            return self._show(request, None)
        user.backend = BACKEND  # because: the library reads from it how they came
        # because: a link by mail is one step; who has a second one set up takes it as well
        answer: HttpResponse = perform_login(request, user, redirect_url=our_own(request) or reverse("home"))
        return self._go_on(request, user) if request.user.is_authenticated else answer

    def _go_on(self, request: HttpRequest, user: User) -> HttpResponseBase:
        sit_at(request, user, request.GET.get("farm", ""))
        return redirect(our_own(request) or "home")

    def _show(self, request: HttpRequest, owner: User | None) -> HttpResponse:
        context = {"owner": owner, "form": ComeInForm(), "next": our_own(request)}
        answer = render(request, "portal/come_in_by_link.html", context, status=200 if owner else 410)
        answer["X-Robots-Tag"] = "noindex"
        return answer

"""Tokens of programs: one's own, made, seen once and revoked; and the owner's list of everybody's."""

from datetime import timedelta

from allauth.account.adapter import get_adapter
from django import forms
from django.contrib import messages
from django.db.models import QuerySet
from django.http import HttpRequest, HttpResponse, HttpResponseBase, QueryDict
from django.shortcuts import redirect

from trimops.accounts.actions import MAY, Action
from trimops.accounts.models import ApiToken
from trimops.accounts.roles import Role
from trimops.accounts.selectors.tokens import tokens_at, tokens_of
from trimops.accounts.services.make_token import TokenRefused, TokenWish, givable, make_token
from trimops.accounts.services.revoke_token import revoke_token
from trimops.accounts.web.program_actions import program_actions
from trimops.accounts.web.proof import proof_wanted
from trimops.kernel.errors import NotFound
from trimops.watch.security_lines import note_security
from trimops.web.scoped_page import ScopedPage

LASTS = (("30", "30 days"), ("90", "90 days"), ("365", "a year"), ("730", "two years"))
LOOKING = ("see", "see-all", "take")
MOST_ID = 2**63 - 1


class TokenForm(forms.Form):
    """What the token is called, what it may and how long; only what the person's part allows is offered."""

    name = forms.CharField(
        label="What the program is called",
        max_length=80,
        help_text="So that you know it again, when you revoke it.",
    )
    scopes = forms.MultipleChoiceField(
        label="What it may do",
        widget=forms.CheckboxSelectMultiple(attrs={"class": "choices"}),
        help_text="As little as it needs: whoever has the token can do all of this in your name.",
    )
    lasts = forms.ChoiceField(label="How long", choices=LASTS, initial="90")

    def __init__(self, data: QueryDict | None = None, *, role: Role) -> None:
        super().__init__(data)
        offered = sorted(givable(role) & program_actions(), key=lambda action: action.value)
        look = [action for action in offered if action.value.endswith(LOOKING)]
        change = [action for action in offered if action not in look]
        self.fields["scopes"].choices = [  # type: ignore[attr-defined]
            ("Look at", [(action.value, _words(action)) for action in look]),
            ("Change", [(action.value, _words(action)) for action in change]),
        ]


def _words(action: Action) -> str:
    return f"{MAY[action].says} ({action.value})"


class OwnProgramsPage(ScopedPage):
    """Making one asks for the password once more, if it was not given within the last minutes."""

    does = Action.KEEP_OWN_PROGRAMS
    template = "accounts/programs.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self._show(TokenForm(role=self.seat.role))

    def post(self, request: HttpRequest) -> HttpResponseBase:
        if way := proof_wanted(request):
            return way
        form = TokenForm(request.POST, role=self.seat.role)
        if not form.is_valid():
            return self._show(form, status=400)
        said = form.cleaned_data
        scopes = {Action(word) for word in said["scopes"]}
        wish = TokenWish(said["name"], scopes, timedelta(days=int(said["lasts"])), self.scope.farm_id)
        try:
            token, text = make_token(membership=self.seat.membership, wish=wish, at=self.now)
        except TokenRefused as refused:
            form.add_error(None, refused.message)
            return self._show(form, status=400)
        note_security("token_made", program=token.pk, may=len(token.scopes), until=token.expiry.isoformat())
        get_adapter(request).send_notification_mail("account/email/token_made", self.seat.user)
        answer = self._show(TokenForm(role=self.seat.role), made=token, text=text)
        answer["Cache-Control"] = "private, no-store"  # because: the token stands on it
        return answer

    def _show(self, form: TokenForm, status: int = 200, **made: object) -> HttpResponse:
        lines = tokens_of(self.seat.membership, self.now)
        return self.show({"form": form, "lines": lines, "is_own": True, **made}, status=status)


class ProgramsPage(ScopedPage):
    does = Action.KEEP_PROGRAMS
    template = "accounts/programs.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self.show({"lines": tokens_at(self.seat.business, self.now), "is_own": False})


class OwnProgramRevokePage(ScopedPage):
    """A button beside each token of one's own."""

    does = Action.KEEP_OWN_PROGRAMS

    def post(self, request: HttpRequest) -> HttpResponseBase:
        if (said := request.POST.get("token", "")).isdecimal():
            own = ApiToken.objects.filter(membership=self.seat.membership)
            _revoke(request, own, int(said), self)
        return redirect("own_programs")


class RevokeAnyPage(ScopedPage):
    """A button beside each token of the business, for who keeps everybody's."""

    does = Action.KEEP_PROGRAMS

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        all_here = ApiToken.objects.filter(membership__business=self.seat.business)
        _revoke(request, all_here, pk, self)
        return redirect("programs")


def _revoke(request: HttpRequest, rows: QuerySet[ApiToken], pk: int, page: ScopedPage) -> None:
    found = rows.filter(pk=pk).first() if pk <= MOST_ID else None
    if found is None:
        raise NotFound("There is nothing at this address.")
    token = revoke_token(token=found, at=page.now, by=page.seat.user)
    note_security("token_revoked", program=token.pk)
    messages.success(request, f"The token of {token.name} is revoked.")

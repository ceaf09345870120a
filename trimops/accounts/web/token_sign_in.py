"""Signing in by a token in the header `Authorization: Bearer ...` (RFC 6750), under /api/ alone."""

import re

from django.http import HttpRequest
from django.utils import timezone
from knox.auth import TokenAuthentication
from rest_framework.exceptions import AuthenticationFailed
from rest_framework.request import Request

from trimops.accounts.models import ApiToken, User

API = "/api/"
TOKEN = re.compile(r"trimops_[0-9a-f]{64}")
REALM = 'Bearer realm="trimops"'
REFUSED = "This token is not good: it is unknown, ended or revoked."


class TokenRead(TokenAuthentication):  # type: ignore[misc]
    """The library's look-up; an ended token is refused, but stays."""

    def _cleanup_token(self, auth_token: ApiToken) -> bool:
        # because: the library deletes what has ended, and whoever looks at the list would miss it
        return not auth_token.is_good(timezone.now())


def bears_token(request: HttpRequest) -> bool:
    """Whether the request wants to be judged by a token, good or not."""
    scheme = request.headers.get("Authorization", "").partition(" ")[0]
    return scheme.lower() == "bearer" and request.path.startswith(API)


def good_token(request: HttpRequest) -> ApiToken | None:
    """The token borne, if it lets its bearer in; None for any other, whatever is wrong with it."""
    text = request.headers.get("Authorization", "").partition(" ")[2].strip()
    if not TOKEN.fullmatch(text):
        return None
    try:
        _, token = TokenRead().authenticate_credentials(text.encode())
    except AuthenticationFailed:
        return None
    return token if isinstance(token, ApiToken) else None


class TokenSignIn(TokenAuthentication):  # type: ignore[misc]
    """What the seat's middleware found of the token, told to the JSON library: so it is looked up once."""

    def authenticate(self, request: Request) -> tuple[User, ApiToken] | None:
        asked = request._request
        if not bears_token(asked):
            return None
        token = getattr(asked, "token", None)
        if not isinstance(token, ApiToken):
            raise AuthenticationFailed(REFUSED)
        return token.user, token

    def authenticate_header(self, request: Request) -> str:
        """401 says how to come in; of a token that was shown, that it is not good (RFC 6750, 3.1)."""
        return f'{REALM}, error="invalid_token"' if bears_token(request._request) else REALM

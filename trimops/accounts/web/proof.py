"""Who changes how one gets in shows once more that it is they."""

from allauth.account.adapter import get_adapter
from allauth.account.internal.flows import reauthentication
from django.http import HttpRequest, HttpResponseBase


def proof_wanted(request: HttpRequest) -> HttpResponseBase | None:
    """The way to the password, passkey or code, asked for unless given a few minutes ago; what was sent waits there.

    None where it was given, or the person has none of the three (they came by a link in their mail).
    """
    if not reauthentication.is_reauthentication_required(request, app="allauth.mfa"):
        return None
    ways = get_adapter(request).get_reauthentication_methods(request.user)
    answer: HttpResponseBase = reauthentication.suspend_request(request, ways[0]["url"])
    return answer

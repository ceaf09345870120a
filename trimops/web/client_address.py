"""From which address a request comes."""

from ipaddress import ip_address

from django.conf import settings
from django.http import HttpRequest


def client_address(request: HttpRequest) -> str | None:
    """The address as text, None where none is told.

    Behind `TRIMOPS_PROXIES` proxies the last so many entries of X-Forwarded-For are theirs to write; what stands before
    them anybody can have written, and is not believed.
    """
    said = request.META.get("REMOTE_ADDR", "")
    if settings.PROXIES:
        told = [each.strip() for each in request.META.get("HTTP_X_FORWARDED_FOR", "").split(",")]
        said = told[-min(settings.PROXIES, len(told))] or said
    try:
        return str(ip_address(said))
    except ValueError:
        return None

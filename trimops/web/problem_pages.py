"""Pages for the two problems that Django has no page for: a rule of the work says no, a form came too late.

The other ones (400, 403, 404, 500) are Django's own handlers with our templates of those names. All of them say
what happened, that nothing was lost, and what to do.
"""

import logging

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.utils.http import url_has_allowed_host_and_scheme

from trimops.kernel.errors import RuleBroken

log = logging.getLogger(__name__)


def rule_broken_page(request: HttpRequest, broken: RuleBroken) -> HttpResponse:
    """409: shows what to mend and leads back to the page it was sent from."""
    context = {"message": broken.message, "code": broken.code, "back_url": page_before(request)}
    return render(request, "409.html", context, status=409)


def csrf_failure(request: HttpRequest, reason: str = "") -> HttpResponse:
    """403 for a form that was open too long (sign-in changed, cookies refused). Named in the settings."""
    log.warning("form refused at %s: %s", request.path, reason)
    return render(request, "403_csrf.html", {"back_url": page_before(request)}, status=403)


def page_before(request: HttpRequest) -> str:
    """The page of this site that the request was sent from, "" when the browser does not say."""
    before = request.META.get("HTTP_REFERER", "")
    ours = url_has_allowed_host_and_scheme(before, {request.get_host()}, require_https=request.is_secure())
    return before if ours else ""

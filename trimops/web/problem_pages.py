"""Pages for the two problems that Django has no page for: a rule of the work says no, a form came too late.

The other ones (400, 403, 404, 500) are Django's own with our templates of those names. All of them say what happened,
that nothing was lost, and what to do. Below /api/v1/ each of them is a problem (RFC 9457) instead.
"""

import logging

from django.http import HttpRequest, HttpResponse, JsonResponse
from django.shortcuts import render
from django.utils.http import url_has_allowed_host_and_scheme
from django.views import defaults

from trimops.kernel.errors import RuleBroken
from trimops.watch.security_lines import note_security
from trimops.web.problems import PROBLEM, bare_problem, is_for_programs, problem_of

log = logging.getLogger(__name__)


def rule_broken_page(request: HttpRequest, broken: RuleBroken) -> HttpResponse:
    """409: shows what to mend and leads back to the page it was sent from."""
    context = {"message": broken.message, "code": broken.code, "back_url": page_before(request)}
    return render(request, "409.html", context, status=409)


def too_often_page(request: HttpRequest, words: str = "", wait: int = 60) -> HttpResponse:
    """429: says why, and when to come again; `wait` in seconds, told as Retry-After too."""
    context = {"words": words, "minutes": max(1, -(-wait // 60)), "back_url": page_before(request)}
    answer = render(request, "429.html", context, status=429)
    answer["Retry-After"] = str(wait)
    return answer


def too_large_page(request: HttpRequest) -> HttpResponse:
    """413: what was sent was not read; as a problem (RFC 9457) for a program."""
    if is_for_programs(request):
        body = problem_of(413, "too_large", "At most 6 MB at once: send it in parts.")
        return JsonResponse(body, status=413, content_type=PROBLEM)
    return render(request, "413.html", status=413)


def csrf_failure(request: HttpRequest, reason: str = "") -> HttpResponse:
    """403 for a form that was open too long (sign-in changed, cookies refused). Named in the settings."""
    log.warning("form refused at %s: %s", request.path, reason)
    if is_for_programs(request):
        return bare_problem(403)
    note_security("form_refused", reason=reason)
    return render(request, "403_csrf.html", {"back_url": page_before(request)}, status=403)


def malformed_page(request: HttpRequest, exception: Exception) -> HttpResponse:
    """400 before any view was asked: Django's page, or a problem for a program. So the next three."""
    return bare_problem(400) if is_for_programs(request) else defaults.bad_request(request, exception)


def not_allowed_page(request: HttpRequest, exception: Exception) -> HttpResponse:
    """403."""
    return bare_problem(403) if is_for_programs(request) else defaults.permission_denied(request, exception)


def not_found_page(request: HttpRequest, exception: Exception) -> HttpResponse:
    """404: no address of ours."""
    return bare_problem(404) if is_for_programs(request) else defaults.page_not_found(request, exception)


def fault_page(request: HttpRequest) -> HttpResponse:
    """500."""
    return bare_problem(500) if is_for_programs(request) else defaults.server_error(request)


def page_before(request: HttpRequest) -> str:
    """The page of this site that the request was sent from, "" when the browser does not say."""
    before = request.META.get("HTTP_REFERER", "")
    ours = url_has_allowed_host_and_scheme(before, {request.get_host()}, require_https=request.is_secure())
    return before if ours else ""

"""Where a refusal becomes an answer: one middleware for pages, one handler for the JSON side."""

from collections.abc import Callable, Sequence

from django.core.exceptions import ValidationError as ModelFault
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from rest_framework import exceptions
from rest_framework.exceptions import APIException
from rest_framework.response import Response
from rest_framework.views import exception_handler

from trimops.kernel.errors import NotFound, RuleBroken
from trimops.web.lost_races import lost_race
from trimops.web.problem_pages import rule_broken_page
from trimops.web.problems import PROBLEM, problem_of

# What each refusal of the JSON library is called by us; a script goes by the code, never by the words.
CODES: tuple[tuple[type[APIException], str], ...] = (
    (exceptions.NotAuthenticated, "not_signed_in"),
    (exceptions.AuthenticationFailed, "not_signed_in"),
    (exceptions.PermissionDenied, "not_allowed"),
    (exceptions.NotFound, "not_found"),
    (exceptions.ParseError, "malformed"),
    (exceptions.UnsupportedMediaType, "wrong_kind_of_content"),
    (exceptions.MethodNotAllowed, "method_not_allowed"),
    (exceptions.NotAcceptable, "not_acceptable"),
    (exceptions.Throttled, "too_often"),
)


class Malformed(APIException):
    """400: what was sent cannot be read; `faults` are (field, reason), as exact as can be."""

    status_code = 400

    def __init__(self, faults: Sequence[tuple[str, str]]) -> None:
        self.faults = [{"field": field, "reason": reason} for field, reason in faults]
        super().__init__("; ".join(f"{field}: {reason}" if field else reason for field, reason in faults))


class TooLarge(APIException):
    """413: more at once than is taken; send it in parts."""

    status_code = 413


class RefusalMiddleware:
    """`RuleBroken` is answered 409 with what to mend, `NotFound` 404 like any unknown address.

    So is what a row itself refuses (a figure with more digits than it holds) where the form let it pass, and what the
    database refuses because somebody else did the same at the very same moment.
    """

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        return self.get_response(request)

    def process_exception(self, request: HttpRequest, fault: Exception) -> HttpResponse | None:
        if isinstance(fault, NotFound):
            return render(request, "404.html", status=404)
        if isinstance(fault, RuleBroken):
            return rule_broken_page(request, fault)
        if isinstance(fault, ModelFault):
            return rule_broken_page(request, RuleBroken(" ".join(fault.messages)))
        if refusal := lost_race(fault):
            return rule_broken_page(request, refusal)
        return None


def answer_refusal(fault: Exception, context: dict[str, object]) -> Response | None:
    """Problem details (RFC 9457) for every error of the JSON side; None for what is truly unexpected (500)."""
    if isinstance(fault, NotFound):
        return _problem(404, "not_found", fault.args[0] if fault.args else "Nothing at this address.")
    if isinstance(fault, RuleBroken):
        return _problem(409, fault.code, fault.message)
    if isinstance(fault, ModelFault):
        status, code = getattr(context.get("view"), "row_fault", (400, "invalid"))
        return _problem(status, code, "; ".join(fault.messages), faults=_faults_of(fault))
    if refusal := lost_race(fault):
        return _problem(409, refusal.code, refusal.message)
    answer = exception_handler(fault, context)
    if answer is None:
        return None
    detail = fault.detail if isinstance(fault, APIException) else str(fault)
    return _problem(answer.status_code, _code_of(fault), str(detail), answer, getattr(fault, "faults", None))


def _faults_of(fault: ModelFault) -> list[dict[str, str]]:
    """What the row itself says of its columns, where it says of which."""
    told = getattr(fault, "error_dict", {})
    return [
        {"field": name if name != "__all__" else "", "reason": words}
        for name, each in told.items()
        for one in each
        for words in one.messages
    ]


def _code_of(fault: Exception) -> str:
    if isinstance(fault, Malformed | TooLarge):
        return "malformed" if isinstance(fault, Malformed) else "too_large"
    if isinstance(code := getattr(fault, "code", None), str):
        return code
    return next((code for kind, code in CODES if isinstance(fault, kind)), "refused")


def _problem(
    status: int,
    code: str,
    detail: str,
    answer: Response | None = None,
    faults: Sequence[dict[str, str]] | None = None,
) -> Response:
    problem = Response(problem_of(status, code, detail, faults), status=status, content_type=PROBLEM)
    for name, value in answer.headers.items() if answer is not None else ():
        if name.lower() in ("allow", "retry-after", "www-authenticate"):
            problem[name] = value
    return problem

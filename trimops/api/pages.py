"""Pages of the API for people: its manners, what each refusal means, and a place to try it."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.template.loader import render_to_string
from django.views import View

from trimops.accounts.actions import Action
from trimops.api.cursors import MOST, USUAL
from trimops.api.problem_codes import problem_codes
from trimops.web.scoped_page import ScopedPage


class ApiPage(ScopedPage):
    """How programs ask, and what they may rely on."""

    does = Action.KEEP_OWN_PROGRAMS

    def get(self, request: HttpRequest) -> HttpResponse:
        return render(request, "api/manners.html", {"usual": USUAL, "most": MOST})


class TryPage(ScopedPage):
    """Every operation, to be tried as oneself or with a token. What is done here is done."""

    does = Action.KEEP_OWN_PROGRAMS

    def get(self, request: HttpRequest) -> HttpResponse:
        return render(request, "api/try.html")


class ProblemsPage(View):
    """Every code, at the address to which `type` of a problem leads. Open to all: it says nothing of anybody."""

    def get(self, request: HttpRequest) -> HttpResponse:
        # because: it is the same for all, so it is made of nothing that the request brings
        return HttpResponse(render_to_string("api/problems.html", {"codes": problem_codes()}))

"""The draft list behind the address in a message: no account, no sign-in."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.utils import timezone
from django.views import View
from django.views.decorators.debug import sensitive_variables

from trimops.web.not_kept import NOT_KEPT
from trimops.web.pdf_answer import pdf_answer
from visits.documents.draft_list import draft_list
from visits.selectors.draft_content import draft_content
from visits.selectors.messages.list_link import visit_of_link


class ListByLink(View):
    """As it is now, until the visit is over."""

    @sensitive_variables("secret")
    def get(self, request: HttpRequest, secret: str) -> HttpResponse:
        visit = visit_of_link(secret)
        if visit is None:
            answer = render(request, "visits/messages/list_ended.html", status=404)
        else:
            answer = pdf_answer(draft_list(draft_content(visit, timezone.now())), f"draft-list-{visit.pk}")
        for name, value in NOT_KEPT.items():
            answer[name] = value
        return answer

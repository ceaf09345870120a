"""What the program could not do by itself, for the owner to mend, have tried again, or leave."""

from django.contrib import messages
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.errands.models import Errand
from trimops.errands.selectors.stuck_errands import stuck_rows, told
from trimops.errands.services.leave_errand import leave_errand
from trimops.errands.services.try_again import try_again
from trimops.web.scoped_page import ScopedPage

PER_PAGE = 40


class StuckPage(ScopedPage):
    does = Action.MEND_STUCK
    template = "web/stuck.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        page = Paginator(stuck_rows(self.scope), PER_PAGE).get_page(request.GET.get("page"))
        return self.show({"page": page, "rows": list(told(page.object_list)), "count": page.paginator.count})


class TryAgainPage(ScopedPage):
    does = Action.MEND_STUCK

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        try_again(errand=self.fetch(Errand, pk))
        messages.success(request, "It is tried again. If it gets stuck once more it stands here again.")
        return redirect("stuck")


class LeavePage(ScopedPage):
    does = Action.MEND_STUCK

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        leave_errand(errand=self.fetch(Errand, pk), at=self.now, by=self.seat.user)
        messages.success(request, "Left. It is not tried any more.")
        return redirect("stuck")

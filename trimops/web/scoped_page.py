"""The base of every page behind sign-in: closed unless a page names what it does."""

from collections.abc import Mapping
from datetime import datetime
from typing import ClassVar, TypeVar

from django.contrib.auth.views import redirect_to_login
from django.core.exceptions import PermissionDenied
from django.db import models
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views import View

from trimops.accounts.actions import Does, action_of
from trimops.kernel.errors import NotFound
from trimops.kernel.scope import Scope
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet
from trimops.web.page_rates import PAGES, WORDS, Cost, cost_wait, pages_wait
from trimops.web.problem_pages import too_often_page
from trimops.web.seat import Seat, seat_of

M = TypeVar("M", bound=TenantModel)


class ScopedPage(View):
    """Answers only who may do what it `does` (nothing by default: closed to all), each within their scope.

    One action, or one for each method. A farm client who lacks no more than a right is told which (403). Who asks too
    often hears when to come again (429); `costs` says by method what costs the machine much.
    """

    does: ClassVar[Does] = None
    costs: ClassVar[Mapping[str, Cost]] = {}
    template: ClassVar[str] = ""

    def dispatch(self, request: HttpRequest, *args: object, **kwargs: object) -> HttpResponseBase:
        if not request.user.is_authenticated:
            return redirect_to_login(request.get_full_path())
        seat = seat_of(request)
        if getattr(request, "wants_second_step", ""):
            return redirect("mfa_index")
        if seat is None:
            return render(request, "web/no_seat.html", status=403)
        action = action_of(self.does, request.method or "")
        if right := seat.lacks(action):
            return render(request, "web/no_right.html", {"right": right}, status=403)
        if not seat.allows(action):
            raise PermissionDenied
        if refused := self._too_often(request, seat):
            return refused
        self.seat: Seat = seat
        self.now: datetime = timezone.now()
        answer = super().dispatch(request, *args, **kwargs)
        # because: what stands behind sign-in is one person's, and whether they may still see it is asked each time
        answer.headers.setdefault("Cache-Control", "private, no-cache")
        return answer

    def _too_often(self, request: HttpRequest, seat: Seat) -> HttpResponse | None:
        if wait := pages_wait(seat.user.pk):
            return too_often_page(request, PAGES, wait)
        cost = self.costs.get((request.method or "").lower())
        wait = cost_wait(cost, seat.user.pk) if cost else 0
        return too_often_page(request, WORDS[cost], wait) if cost and wait else None

    @property
    def may_post(self) -> bool:
        """Whether this person may not only look at the page but also send its form."""
        return self.seat.allows(action_of(self.does, "post"))

    @property
    def scope(self) -> Scope:
        return self.seat.scope

    def fetch(self, model: type[M], pk: int, *related: str) -> M:
        """The row of that key within the scope, else `NotFound` (404, also for another business's)."""
        rows: TenantQuerySet[M] = model._default_manager.all()  # type: ignore[assignment]
        return self.fetch_from(rows.within(self.scope).select_related(*related) if related else rows, pk)

    def fetch_from(self, rows: TenantQuerySet[M], pk: int) -> M:
        """The row of that key among `rows` narrowed to the scope, else `NotFound`."""
        try:
            return rows.within(self.scope).get(pk=pk)
        except models.ObjectDoesNotExist:
            raise NotFound("There is nothing at this address.") from None

    def show(
        self, context: dict[str, object] | None = None, template: str = "", status: int = 200
    ) -> HttpResponse:
        return render(self.request, template or self.template, context or {}, status=status)

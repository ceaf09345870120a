"""The draft list of a visit: looked at, struck from, added to. The farm's own page of it has the same base."""

from collections.abc import Callable, Mapping
from typing import ClassVar

from django.contrib import messages
from django.core.exceptions import PermissionDenied
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.kernel.errors import RuleBroken
from trimops.web.scoped_page import ScopedPage
from visits.models import Visit
from visits.selectors.draft_view import DraftView, draft_view
from visits.services.add_draft_cow import add_draft_cow
from visits.services.expect_cows import expect_cows
from visits.services.strike_cow import strike_cow
from visits.services.take_back_draft_change import take_back_draft_change
from visits.web.draft_forms import DraftAct, DraftActForm


class DraftEditPage(ScopedPage):
    """`address` is the name of its own address, `cow_page` that of a cow's page (none: numbers lead nowhere)."""

    address: ClassVar[str] = ""
    cow_page: ClassVar[str] = ""

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        return self._list(self._visit(pk), None, 200)

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        visit = self._visit(pk)
        form = DraftActForm(request.POST, visit=visit)
        if form.is_count and self.seat.scope.is_farm_client:
            raise PermissionDenied
        if not form.is_valid():
            return self._list(visit, form, 400)
        try:
            said = self._acts()[form.cleaned_data["act"]](visit, form)
        except RuleBroken as fault:
            form.add_error(None, fault.message)
            return self._list(self._visit(pk), form, 409)
        messages.success(request, said)
        self._warn(request, self._visit(pk))
        return redirect(self.address, visit.pk)

    def more(self, visit: Visit) -> dict[str, object]:
        """What else its template needs."""
        return {}

    def _visit(self, pk: int) -> Visit:
        return self.fetch(Visit, pk, "farm", "business", "van")

    def _list(self, visit: Visit, form: DraftActForm | None, status: int) -> HttpResponse:
        draft = draft_view(visit, self.now)
        words = {
            "visit": visit,
            "farm": visit.farm,
            "draft": draft,
            "form": form or DraftActForm(visit=visit, count=max(1, len(draft.order.present))),
            "may_change": draft.can_change and self.may_post,
            "for_farm": self.seat.scope.is_farm_client,
            "cow_page": self.cow_page,
        }
        return self.show({**words, **self.more(visit)}, status=status)

    def _acts(self) -> Mapping[str, Callable[[Visit, DraftActForm], str]]:
        return {
            DraftAct.STRIKE: self._strike,
            DraftAct.ADD: self._add,
            DraftAct.BACK: self._back,
            DraftAct.COUNT: self._count,
        }

    def _strike(self, visit: Visit, form: DraftActForm) -> str:
        cow = form.found_cow()
        strike_cow(visit=visit, cow=cow, why=form.cleaned_data["why"], at=self.now, by=self.seat.user)
        return f"Cow {cow} is off the list."

    def _add(self, visit: Visit, form: DraftActForm) -> str:
        cow = form.found_cow()
        add_draft_cow(visit=visit, cow=cow, why=form.cleaned_data["why"], at=self.now, by=self.seat.user)
        return f"Cow {cow} is on the list."

    def _back(self, visit: Visit, form: DraftActForm) -> str:
        change = form.found_change()
        take_back_draft_change(change=change, at=self.now, by=self.seat.user)
        return f"Cow {change.cow} is as before the change."

    def _count(self, visit: Visit, form: DraftActForm) -> str:
        row = expect_cows(visit=visit, count=form.cleaned_data["count"], at=self.now, by=self.seat.user)
        return (
            f"The visit counts with {row.head_count} cows, {row.corrective_count} of them lame or re-checked."
        )

    def _warn(self, request: HttpRequest, visit: Visit) -> None:
        draft = draft_view(visit, self.now)
        if words := _too_long(draft, for_farm=self.seat.scope.is_farm_client):
            messages.warning(request, words)


class DraftPage(DraftEditPage):
    """As staff see it."""

    does = Action.KEEP_VISITS
    template = "visits/draft.html"
    address = "draft"
    cow_page = "cow"


def _too_long(draft: DraftView, *, for_farm: bool) -> str:
    """What must be said at once when the list has grown beyond its time."""
    over = draft.time.over
    cows = f"{over} cow{'' if over == 1 else 's'} more than the time allows"
    if over:
        return (
            f"{cows}: the trimmer will ring." if for_farm else f"{cows}: ring the farm, or find another hour."
        )
    if draft.time.is_unknown:
        longer = "The list takes longer than planned"
        return f"{longer}: the trimmer will ring." if for_farm else f"{longer}: look at the day."
    return ""

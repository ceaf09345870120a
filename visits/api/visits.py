"""Visits: the list, one more wanted, one of them."""

from datetime import date, time, timedelta

from rest_framework import serializers
from rest_framework.request import Request
from rest_framework.response import Response

from farms.models import Farm
from trimops.accounts.actions import Action
from trimops.api.asked import WholeNumber
from trimops.api.fields import OneOf
from trimops.api.kinds import RowApi, RowsApi
from trimops.api.op import Filter, Op, Said
from trimops.api.rows import MOST_ID, RowField
from trimops.kernel.clock import at_local
from trimops.tenancy.querysets import TenantQuerySet
from visits.api.visit_shown import VisitShown, WholeVisit, WholeVisitShown
from visits.api.wishes import WishWord, wish_of
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import Visit
from visits.selectors.draft_view import CHANGEABLE, draft_view
from visits.services.ask_visit import ask_visit


class FarmWishWord(WishWord):
    """A wish, and at which farm."""

    farm = RowField(Farm)


def id_filter(lookup: str) -> Filter:
    """Rows of another row, by its id."""
    return Filter(WholeNumber(min_value=1, max_value=MOST_ID), lookup)


def day_word(says: str) -> serializers.DateField:
    return serializers.DateField(input_formats=["iso-8601"], help_text=says)


class VisitsApi(RowsApi[Visit]):
    """Visits of the business, wanted ones as well; a farm client sees their own. `from_day` and `until_day` look at
    the hour that a visit has: one without an hour is not found by them. Asking for one puts it on the list of what is
    wanted and plans nothing; a last day before the first, more lame cows than cows, or a cow of another farm is
    refused (wish_makes_no_sense)."""

    model = Visit
    ops = {
        "get": Op(
            Action.SEE_VISITS,
            "list_visits",
            "The visits",
            shows=VisitShown,
            lists=True,
            orders={
                "id": ("id",),
                "asked_at": ("asked_at", "id"),
                "due_until": ("due_until", "id"),
                "due_from": ("due_from", "id"),
                "changed_at": ("changed_at", "id"),
            },
            filters={
                "state": Filter(OneOf(VisitState), "state"),
                "reason": Filter(OneOf(VisitReason), "reason"),
                "farm": id_filter("farm_id"),
                "van": id_filter("van_id"),
                "due_by": Filter(day_word("Wanted on this day or before."), "due_from__lte"),
            },
            query={
                "from_day": day_word("With an hour on this day or after, by the business's clock."),
                "until_day": day_word("With an hour on this day or before."),
            },
        ),
        "post": Op(
            Action.KEEP_VISITS,
            "ask_visit",
            "Ask for a visit",
            takes=FarmWishWord,
            shows=VisitShown,
            status=201,
            repeats=True,
        ),
    }

    def rows(self) -> TenantQuerySet[Visit]:
        rows, zone = super().rows(), self.seat.business.zone
        first, last = self.asked.get("from_day"), self.asked.get("until_day")
        if first:
            rows = rows.filter(planned_start__gte=at_local(_near(first), time(0), zone))
        if last:
            rows = rows.filter(planned_start__lt=at_local(_near(last) + timedelta(days=1), time(0), zone))
        return rows

    def make(self, content: Said) -> Visit:
        wish = wish_of(content, self.seat.user.name)
        return ask_visit(farm=content["farm"], wish=wish, at=self.now, by=self.seat.user)


class VisitApi(RowApi[Visit]):
    """One visit: its history, the hour that the farm was told, what its draft list takes, and what may be done next
    (`may`), by you and as it stands."""

    model = Visit
    related = ("farm", "business", "van")
    ops = {"get": Op(Action.SEE_VISITS, "read_visit", "One visit", shows=WholeVisitShown)}

    def get(self, request: Request, **kwargs: object) -> Response:
        visit = self.row()
        length = draft_view(visit, self.now).time if visit.visit_state in CHANGEABLE else None
        return self.answer(self.show(WholeVisit(visit, self.seat, length)))


def _near(day: date) -> date:
    """No visit is further off, and a day must not leave the calendar when it becomes a moment."""
    return min(max(day, date(1970, 1, 2)), date(2900, 1, 1))

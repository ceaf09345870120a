"""A farm asks for a visit: its own people, or staff for it."""

from datetime import timedelta

from allauth.core import ratelimit
from rest_framework.exceptions import Throttled

from farms.models import Farm
from trimops.accounts.actions import Action
from trimops.api.kinds import StepApi
from trimops.api.op import Op, Said
from trimops.api.refusals import CannotBeMeant
from trimops.kernel.clock import local_day
from trimops.portal.services.leave_wish import leave_wish
from visits.api.visit_shown import VisitShown
from visits.api.wishes import WishWord, wish_of
from visits.domain.visit_states import VisitReason
from visits.models import Visit
from visits.services.ask_visit import VisitWish, ask_visit

FURTHEST = timedelta(days=120)


class AskingApi(StepApi[Farm]):
    """What all addresses of asking share."""

    model = Farm
    related = ("business",)

    def wish(self, content: Said) -> VisitWish:
        """What is asked for; a farm client asks in their own name, and for days that are to come."""
        if self.scope.is_farm_client:
            self._refuse_days(content)
            content = {**content, "asked_by": self.seat.user.name[:120]}
        return wish_of(content, self.seat.user.name)

    def _refuse_days(self, content: Said) -> None:
        today, faults = local_day(self.now, self.seat.business.zone), []
        if content["reason"] is VisitReason.RECHECK:
            faults.append(("reason", "Re-checks come by themselves: ask for an urgent or a routine visit."))
        if content["due_from"] < today:
            faults.append(("due_from", "That day is over: give today or a later one."))
        if content["due_from"] > today + FURTHEST:
            faults.append(("due_from", "That is too far ahead: give a day within four months."))
        if content["due_until"] > today + 2 * FURTHEST:
            faults.append(("due_until", "That is too far ahead: give a day within eight months."))
        if faults:
            raise CannotBeMeant(faults=faults)


class WishesApi(AskingApi):
    """Leaves a wish with the business, without an hour: they ring or plan it. A farm client may leave 20 a day."""

    ops = {
        "post": Op(
            Action.ASK_VISITS,
            "leave_wish",
            "Leave a wish",
            takes=WishWord,
            shows=VisitShown,
            status=201,
            repeats=True,
        )
    }

    def act(self, row: Farm, content: Said) -> Visit:
        wish = self.wish(content)
        if not self.scope.is_farm_client:
            return ask_visit(farm=row, wish=wish, at=self.now, by=self.seat.user)
        if not ratelimit.consume(self.request._request, action="leave_wish"):
            raise Throttled(wait=24 * 3600)
        return leave_wish(farm=row, wish=wish, at=self.now, by=self.seat.user)

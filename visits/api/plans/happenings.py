"""Something happened in the week: it is put down, and the rest of the week is planned again."""

from datetime import date, datetime, time, timedelta

from rest_framework import serializers
from rest_framework.request import Request
from rest_framework.response import Response

from farms.models import Farm
from trimops.accounts.actions import Action
from trimops.api.fields import Day, Moment
from trimops.api.op import Op, Said
from trimops.api.refusals import CannotBeMeant
from trimops.api.rows import RowField
from trimops.api.view import Api
from trimops.kernel.clock import at_local, local_day
from trimops.web.page_rates import Cost
from visits.api.visit_steps import WhyOffWord
from visits.api.week_days import week_in_address
from visits.api.wishes import ScoreWord
from visits.domain.visit_states import VisitReason
from visits.models import OutBecause, Van, Visit
from visits.selectors.week_under_way import LateWord
from visits.services.ask_visit import VisitWish
from visits.services.note_what_happened import Happening, LameWord, OffWord, OutWord
from visits.services.replan_week import replan_week

BROKEN = [choice for choice in OutBecause.choices if choice[0] != OutBecause.ILL]
MOST_LAME = 60


class LateSaid(serializers.Serializer):  # type: ignore[type-arg]
    """The van at this visit is free later than planned."""

    visit = RowField(Visit)
    free = Moment(help_text="When the work there is done.")
    meal_had = serializers.BooleanField(default=False)


class OutSaid(serializers.Serializer):  # type: ignore[type-arg]
    """A crush or a van is out of action."""

    van = RowField(Van)
    because = serializers.ChoiceField(BROKEN)
    since = Moment()
    until = Moment(help_text="The best guess; it can be put right.")


class IllSaid(serializers.Serializer):  # type: ignore[type-arg]
    """Whose van stays in, from the first to the last day, both among them."""

    van = RowField(Van)
    first = Day()
    last = Day(help_text="The best guess; it can be put right.")


class OffSaid(WhyOffWord):
    """A farm does not want its visit."""

    visit = RowField(Visit)


class LameSaid(ScoreWord):
    """A cow that cannot wait."""

    farm = RowField(Farm)
    head_count = serializers.IntegerField(min_value=1, max_value=MOST_LAME, default=1, help_text="Lame cows.")
    due_until = Day(help_text="To be seen by.")
    asked_by = serializers.CharField(max_length=120, help_text="Who rang.")


class HappenedShown(serializers.Serializer):  # type: ignore[type-arg]
    """The plan that is thought about; null where nothing is left to plan. What happened stands in any case."""

    plan = serializers.IntegerField(allow_null=True)


class HappeningApi(Api):
    """The base: it is noted at once, and the rest of the week is thought about (202). The new plan is a proposal: read
    what it changes, then accept or drop it."""

    costs = {"post": Cost.PLAN}

    def happening(self, content: Said) -> Happening:
        """What happened, for the service."""
        raise NotImplementedError

    def post(self, request: Request, **kwargs: object) -> Response:
        return self.once(self._note)

    def _note(self) -> Response:
        monday = week_in_address(self.kwargs["week"])
        plan = replan_week(
            business=self.seat.business,
            monday=monday,
            happening=self.happening(self.content()),
            at=self.now,
            by=self.seat.user,
        )
        where = f"/api/v1/plans/{plan.pk}/" if plan else ""
        return self.answer(self.show({"plan": plan.pk if plan else None}), location=where)

    def moment(self, day: date, days: int = 0) -> datetime:
        """The beginning of a day by the business's clock, so many days on."""
        return at_local(day + timedelta(days=days), time(0), self.seat.business.zone)


def happened(name: str, says: str, takes: type[serializers.Serializer]) -> dict[str, Op]:  # type: ignore[type-arg]
    """The one operation of something that happened."""
    op = Op(Action.PLAN_WEEKS, name, says, takes=takes, shows=HappenedShown, status=202, repeats=True)
    return {"post": op}


class RunningLateApi(HappeningApi):
    """A van is running late at a visit of today: the rest of its day is timed again from when it is free. Refused for a
    visit that is done or has no van, or a time that is over (happening_makes_no_sense)."""

    ops = happened("replan_late", "A van is running late", LateSaid)

    def happening(self, content: Said) -> Happening:
        visit: Visit = content["visit"]
        today = local_day(self.now, self.seat.business.zone)
        start = visit.planned_start
        if start is None or local_day(start, self.seat.business.zone) != today:
            raise CannotBeMeant(faults=[("visit", "It has no hour today.")])
        if content["free"] >= self.moment(today, 2):
            raise CannotBeMeant(faults=[("free", "That is not today: call the visit off or put it off.")])
        return LateWord(visit, content["free"], content["meal_had"])


class VanOutApi(HappeningApi):
    """A crush or van is out of action: its visits go to another van or another day, where they can."""

    ops = happened("replan_van_out", "A crush or van is out of action", OutSaid)

    def happening(self, content: Said) -> Happening:
        because = OutBecause(content["because"])
        return OutWord(content["van"], because, content["since"], content["until"])


class TrimmerIllApi(HappeningApi):
    """A trimmer is ill: the week goes to the other van, where the crews allow."""

    ops = happened("replan_ill", "A trimmer is ill", IllSaid)

    def happening(self, content: Said) -> Happening:
        if content["last"] < content["first"]:
            raise CannotBeMeant(faults=[("last", "This is before the first day.")])
        since, until = self.moment(content["first"]), self.moment(content["last"], 1)
        since = max(since, self.now.replace(second=0, microsecond=0))
        return OutWord(content["van"], OutBecause.ILL, since, until)


class FarmCallsOffApi(HappeningApi):
    """A farm calls its visit off: the room that it leaves is used, if that is worth a change."""

    ops = happened("replan_called_off", "A farm calls its visit off", OffSaid)

    def happening(self, content: Said) -> Happening:
        return OffWord(content["visit"], content["because"])


class LameCowApi(HappeningApi):
    """A lame cow cannot wait: an urgent visit is asked for and put in where it costs least."""

    ops = happened("replan_lame", "A lame cow cannot wait", LameSaid)

    def happening(self, content: Said) -> Happening:
        today = local_day(self.now, self.seat.business.zone)
        if content["due_until"] < today:
            raise CannotBeMeant(faults=[("due_until", "This day is over: give today or a later one.")])
        first, cows = max(today, week_in_address(self.kwargs["week"])), content["head_count"]
        wish = VisitWish(
            VisitReason.URGENT,
            content["asked_by"],
            first,
            max(first, content["due_until"]),
            cows,
            cows,
            content["mobility_scale"],
            content["mobility_score"],
        )
        return LameWord(content["farm"], wish)

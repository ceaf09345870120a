"""The steps of a visit, from the wish to the finish."""

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.fields import Moment
from trimops.api.kinds import StepApi
from trimops.api.op import Op, Said
from trimops.api.rows import RowField
from visits.api.visit_shown import VisitShown
from visits.models import Van, Visit
from visits.services.call_off_visit import call_off_visit
from visits.services.confirm_visit import confirm_visit
from visits.services.expect_cows import MOST, expect_cows
from visits.services.finish_visit import SignOff, finish_visit
from visits.services.plan_visit import plan_visit
from visits.services.put_off_visit import put_off_visit
from visits.services.start_visit import start_visit
from visits.services.tell_hour import tell_hour


def step(
    name: str,
    says: str,
    takes: type[serializers.Serializer] | None = None,  # type: ignore[type-arg]
    action: Action = Action.KEEP_VISITS,
) -> dict[str, Op]:
    """The one operation of a step of a visit."""
    return {"post": Op(action, name, says, takes=takes, shows=VisitShown, repeats=True)}


class HourWord(serializers.Serializer):  # type: ignore[type-arg]
    """Van and hour."""

    van = RowField(Van)
    start = Moment()


class WhyOffWord(serializers.Serializer):  # type: ignore[type-arg]
    """Why."""

    because = serializers.CharField(max_length=200)


class StartWord(serializers.Serializer):  # type: ignore[type-arg]
    """Whether the check before the first cow was gone through."""

    checked = serializers.BooleanField(help_text="Gloves, guards, eyes, knives and crush were checked.")


class SignOffWord(serializers.Serializer):  # type: ignore[type-arg]
    """Who received the account of the visit, how the kit was left, what was done, what is the farm's to do."""

    signed_by = serializers.CharField(max_length=120)
    washed_down = serializers.BooleanField()
    hygiene_note = serializers.CharField(max_length=200, allow_blank=True, default="")
    was_done = serializers.CharField(max_length=4000, allow_blank=True, default="")
    farm_to_do = serializers.CharField(max_length=4000, allow_blank=True, default="")


class CountWord(serializers.Serializer):  # type: ignore[type-arg]
    """Cows that the visit is to count with."""

    count = serializers.IntegerField(min_value=1, max_value=MOST)


class PlanVisitApi(StepApi[Visit]):
    """Gives a visit its van and hour, or another one; a confirmed visit that is moved is to be confirmed anew. Refused
    where the van is elsewhere, or held for a farm, in those hours (van_is_busy), and once the work has begun
    (visit_cannot_move)."""

    model = Visit
    ops = step("plan_visit", "Give it van and hour", HourWord)

    def act(self, row: Visit, content: Said) -> Visit:
        return plan_visit(
            visit=row, van=content["van"], start=content["start"], at=self.now, by=self.seat.user
        )


class ConfirmVisitApi(StepApi[Visit]):
    """The farm has said yes: the visit keeps van and hour when the week is planned again."""

    model = Visit
    ops = step("confirm_visit", "The farm said yes")

    def act(self, row: Visit, content: Said) -> Visit:
        return confirm_visit(visit=row, at=self.now, by=self.seat.user)


class TellHourApi(StepApi[Visit]):
    """The farm was told its hour and counts on it; planning again pays for moving it. Nothing is sent by this. Said
    twice, it changes nothing. Refused without an hour (no_hour_to_tell)."""

    model = Visit
    ops = step("tell_hour", "The farm knows its hour")

    def act(self, row: Visit, content: Said) -> Visit:
        return tell_hour(visit=row, at=self.now, by=self.seat.user)


class PutOffVisitApi(StepApi[Visit]):
    """A planned or confirmed visit loses van and hour and is wanted again."""

    model = Visit
    ops = step("put_off_visit", "Put it off", WhyOffWord)

    def act(self, row: Visit, content: Said) -> Visit:
        return put_off_visit(visit=row, because=content["because"], at=self.now, by=self.seat.user)


class CallOffVisitApi(StepApi[Visit]):
    """The visit will not be, for a reason that the farm may ask for. Re-checks that it was to see to are free to be
    gathered into another."""

    model = Visit
    ops = step("call_off_visit", "Call it off", WhyOffWord)

    def act(self, row: Visit, content: Said) -> Visit:
        return call_off_visit(visit=row, because=content["because"], at=self.now, by=self.seat.user)


class StartVisitApi(StepApi[Visit]):
    """The work begins, and with it the watch over whoever begins it, where the business has that on. Refused until
    the check before the first cow is ticked (start_not_checked): a program must not tick it for a person."""

    model = Visit
    ops = step("start_visit", "Begin the work", StartWord, Action.WORK_AT_CRUSH)

    def act(self, row: Visit, content: Said) -> Visit:
        return start_visit(visit=row, checked=content["checked"], at=self.now, by=self.seat.user)


class FinishVisitApi(StepApi[Visit]):
    """The last cow is done and somebody received the account. The visit stays finished; its re-checks are booked, its
    invoice is drafted and its report issued soon after."""

    model = Visit
    ops = step("finish_visit", "Finish it", SignOffWord, Action.WORK_AT_CRUSH)

    def act(self, row: Visit, content: Said) -> Visit:
        return finish_visit(visit=row, sign_off=SignOff(**content), at=self.now, by=self.seat.user)


class ExpectCowsApi(StepApi[Visit]):
    """The draft list is cut at so many cows, and the visit lasts as long as they take where that moves nobody. Refused
    once the work has begun (draft_is_closed) and where the van may take no more that day (day_is_full)."""

    model = Visit
    ops = step("expect_cows", "Count with so many cows", CountWord)

    def act(self, row: Visit, content: Said) -> Visit:
        return expect_cows(visit=row, count=content["count"], at=self.now, by=self.seat.user)

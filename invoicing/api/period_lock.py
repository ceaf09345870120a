"""Closing the books up to a day, and opening them again."""

from rest_framework import serializers
from rest_framework.request import Request
from rest_framework.response import Response

from invoicing.api.money import Kept, Why
from invoicing.models import Invoice, PeriodLock
from invoicing.selectors.period_lock import lock_history, locked_until
from invoicing.services.lock_period import lock_period
from trimops.accounts.actions import Action
from trimops.api.fields import Day
from trimops.api.kinds import DoApi
from trimops.api.op import Op, Said
from trimops.kernel.errors import RuleBroken


class DraftsInside(RuleBroken):
    """Drafts lie inside of what is to be locked; they could not be issued then."""

    code = "drafts_inside"


class LockWord(serializers.Serializer):  # type: ignore[type-arg]
    """Up to which day, and why."""

    until = Day(
        allow_null=True, help_text="Locked up to and with; null: nothing is locked, all is open again."
    )
    why = Why()
    even_so = serializers.BooleanField(
        default=False, help_text="Lock although drafts lie inside: they cannot be issued then."
    )


class LockRow(Kept):
    """A lock, or an opening, with its reason."""

    by = serializers.IntegerField(source="by_id", read_only=True, help_text="Id of the person.")

    class Meta:
        model = PeriodLock
        fields = ["locked_until", "at", "by", "why"]
        read_only_fields = fields


class LockTold(serializers.Serializer):  # type: ignore[type-arg]
    """Up to which day the books are closed (null: nothing is), and how that came, the newest first."""

    locked_until = Day(allow_null=True)
    history = LockRow(many=True)


class PeriodLockApi(DoApi):
    """Nothing dated up to that day may be issued, paid or changed. Each lock and each opening is kept, with its reason.

    Refused: `cannot_lock`, `drafts_inside`.
    """

    ops = {
        "get": Op(Action.SEE_MONEY, "read_period_lock", "Up to when the books are closed", shows=LockTold),
        "post": Op(
            Action.LOCK_BOOKS,
            "lock_period",
            "Close the books, or open them",
            takes=LockWord,
            shows=LockTold,
            repeats=True,
        ),
    }

    def get(self, request: Request, **kwargs: object) -> Response:
        return self.answer(self.show(self._told()))

    def act(self, content: Said) -> object:
        until = content["until"]
        drafts = Invoice.objects.within(self.scope).drafts()
        if until and not content["even_so"] and drafts.filter(tax_point__lte=until).exists():
            raise DraftsInside("Drafts lie inside: issue them first, or say that it is locked even so.")
        why = content["why"]
        lock_period(scope=self.scope, until=until, why=why, at=self.now, by=self.seat.user)
        return self._told()

    def _told(self) -> object:
        return {"locked_until": locked_until(self.scope), "history": lock_history(self.scope)}

"""From work to drafts: what is ready to be billed, what changed after its bill, what is left unbilled."""

from rest_framework import serializers
from rest_framework.request import Request
from rest_framework.response import Response

from farms.models import Farm
from invoicing.api.drafts import ReasonWord
from invoicing.domain.pricing import PriceItem
from invoicing.domain.visit_work import WorkPiece, piece_words
from invoicing.selectors.bill_difference import bill_difference
from invoicing.selectors.ready_to_bill import ready_to_bill
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.draft_late_work import draft_late_work
from invoicing.services.draft_month import draft_month
from invoicing.services.draft_ready import draft_ready
from invoicing.services.leave_unbilled import bill_after_all, leave_unbilled
from invoicing.services.open_draft import Hand
from trimops.accounts.actions import Action
from trimops.api.fields import Day, OneOf
from trimops.api.kinds import DoApi, StepApi, ToldApi
from trimops.api.op import Op, Said
from trimops.kernel.clock import local_day
from visits.models import Visit

OF_VISIT = ("farm__business", "business")


def ids(help_text: str) -> serializers.ListField:
    """Keys of rows."""
    return serializers.ListField(child=serializers.IntegerField(min_value=1), help_text=help_text)


class ReadyTold(serializers.Serializer):  # type: ignore[type-arg]
    """Each list at most 200 long, the oldest first."""

    visit_count = serializers.IntegerField(min_value=0, help_text="Of all visits that nothing bills.")
    visits = ids("Finished visits that nothing bills.")
    months = ids("Month drafts whose month is over.")
    running = ids("Month drafts whose month still runs.")
    late = ids("Visits whose work is no longer what was billed.")
    left = ids("The newest visits that were left unbilled as a whole.")


class DraftedTold(serializers.Serializer):  # type: ignore[type-arg]
    """The draft, or the issued invoice that bills the visit; null where nothing on it is charged for."""

    invoice = serializers.IntegerField(min_value=1, allow_null=True)


class RefusedVisit(serializers.Serializer):  # type: ignore[type-arg]
    """A visit that could not be drafted, and why."""

    visit = serializers.IntegerField(min_value=1)
    why = serializers.CharField()


class DraftedAllTold(serializers.Serializer):  # type: ignore[type-arg]
    """What came of it."""

    drafts = ids("The drafts.")
    free = ids("Visits on which nothing is charged for.")
    refused = RefusedVisit(many=True)


class MonthWord(serializers.Serializer):  # type: ignore[type-arg]
    """Which month."""

    month = Day(help_text="Any day of it.")


class PiecesTold(serializers.Serializer):  # type: ignore[type-arg]
    """How many pieces of work."""

    pieces = serializers.IntegerField(min_value=0)


class AddedPiece(serializers.Serializer):  # type: ignore[type-arg]
    """Work that nothing bills."""

    trim = serializers.IntegerField(allow_null=True, source="trim_id")
    item = OneOf(PriceItem)
    words = serializers.SerializerMethodField()

    def get_words(self, piece: WorkPiece) -> str:
        return piece_words(piece)


class GonePiece(serializers.Serializer):  # type: ignore[type-arg]
    """Work that an issued invoice bills and that is no longer there."""

    trim = serializers.IntegerField(allow_null=True, source="trim_id")
    invoice = serializers.IntegerField(source="invoice_id")
    words = serializers.CharField()


class LateWorkTold(serializers.Serializer):  # type: ignore[type-arg]
    """What changed of a visit since it was billed; both empty: the bill fits the work."""

    added = AddedPiece(many=True)
    gone = GonePiece(many=True)


class InvoicesTold(serializers.Serializer):  # type: ignore[type-arg]
    """Drafts that were made; nothing is issued by this."""

    invoices = ids("A draft for what was added, a credit note for what is gone.")


class ReadyApi(ToldApi):
    """What is ready to be billed: visits without a draft, months that are over, work that changed after its bill."""

    ops = {"get": Op(Action.SEE_MONEY, "read_ready_to_bill", "What is ready to be billed", shows=ReadyTold)}

    def told(self) -> object:
        ready = ready_to_bill(self.scope, local_day(self.now, self.seat.business.zone))
        return {
            "visit_count": ready.visit_count,
            "visits": [visit.pk for visit in ready.visits],
            "months": [invoice.pk for invoice in ready.months],
            "running": [invoice.pk for invoice in ready.running],
            "late": [late.visit_id for late in ready.late],
            "left": [visit.pk for visit in ready.left],
        }


class DraftReadyApi(DoApi):
    """The finished visits that nothing bills are drafted, at most 100 at once, the oldest first."""

    ops = {
        "post": Op(
            Action.KEEP_MONEY, "draft_ready", "Draft all that is ready", shows=DraftedAllTold, repeats=True
        )
    }

    def act(self, content: Said) -> object:
        made = draft_ready(business=self.seat.business, at=self.now)
        return {
            "drafts": list(made.drafts),
            "free": [visit.pk for visit in made.free],
            "refused": [{"visit": visit.pk, "why": why} for visit, why in made.refused],
        }


class VisitStep(StepApi[Visit]):
    """Something about the bill of one visit."""

    model = Visit
    related = OF_VISIT

    def hand(self, reason: str) -> Hand:
        return Hand(self.seat.user, self.now, reason)


class DraftVisitApi(VisitStep):
    """The draft that bills a finished visit at the prices of its day, its own or that of the farm's month.

    A draft made before is made anew. A visit that is billed answers its issued invoice. Refused: `visit_not_finished`,
    `price_missing`.
    """

    ops = {
        "post": Op(
            Action.KEEP_MONEY, "draft_visit", "Draft a visit's invoice", shows=DraftedTold, repeats=True
        )
    }

    def act(self, row: Visit, content: Said) -> object:
        made = draft_invoice(visit=row, at=self.now)
        return {"invoice": made.pk if made else None}


class DraftMonthApi(StepApi[Farm]):
    """A farm's finished visits of one month that nothing bills yet, on one draft.

    Refused: `price_missing`.
    """

    model = Farm
    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "draft_month",
            "Draft a farm's month",
            takes=MonthWord,
            shows=DraftedTold,
            repeats=True,
        )
    }

    def act(self, row: Farm, content: Said) -> object:
        made = draft_month(farm=row.locked(), month=content["month"], at=self.now)
        return {"invoice": made.pk if made else None}


class LeaveUnbilledApi(VisitStep):
    """What nothing bills of a visit is left unbilled, and why; it is not proposed again."""

    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "leave_unbilled",
            "Leave a visit's work unbilled",
            takes=ReasonWord,
            shows=PiecesTold,
            repeats=True,
        )
    }

    def act(self, row: Visit, content: Said) -> object:
        return {"pieces": leave_unbilled(visit=row, hand=self.hand(content["reason"]))}


class BillAfterAllApi(VisitStep):
    """Work of a visit that was left unbilled as a whole is to be billed again."""

    ops = {
        "post": Op(Action.KEEP_MONEY, "bill_after_all", "Bill it after all", shows=PiecesTold, repeats=True)
    }

    def act(self, row: Visit, content: Said) -> object:
        return {"pieces": bill_after_all(visit=row, hand=self.hand("To be billed after all"))}


class LateWorkApi(StepApi[Visit]):
    """What changed of a visit since it was billed. POST: what was added is drafted, what is gone is credited.

    Nothing is issued by this. Refused: `bill_fits`, `price_missing`.
    """

    model = Visit
    related = OF_VISIT
    ops = {
        "get": Op(Action.SEE_MONEY, "read_late_work", "What changed since the bill", shows=LateWorkTold),
        "post": Op(
            Action.KEEP_MONEY,
            "draft_late_work",
            "Draft what changed since the bill",
            takes=ReasonWord,
            shows=InvoicesTold,
            repeats=True,
        ),
    }

    def get(self, request: Request, **kwargs: object) -> Response:
        return self.answer(self.show(bill_difference(self.row())))

    def act(self, row: Visit, content: Said) -> object:
        made = draft_late_work(visit=row, hand=Hand(self.seat.user, self.now, content["reason"]))
        return {"invoices": [invoice.pk for invoice in made]}

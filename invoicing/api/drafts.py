"""Drafts: the list, one of them, what stands above its lines; made anew, thrown away, issued."""

from rest_framework import serializers

from farms.models import Farm
from invoicing.api.draft_shown import DraftShown
from invoicing.api.invoice_shown import InvoiceRow, InvoiceShown
from invoicing.api.invoices import key_of
from invoicing.api.money import Amount, Why
from invoicing.models import Invoice
from invoicing.models.invoice import InvoiceQuerySet
from invoicing.selectors.invoice_rows import HEAVY, ready_drafts
from invoicing.services.change_draft_head import DraftHead, change_draft_head
from invoicing.services.discard_draft import discard_draft
from invoicing.services.draft_anew import draft_anew
from invoicing.services.issue_and_send import issue_and_send
from invoicing.services.issue_invoice import issue_invoice
from invoicing.services.issue_run import start_issue_run
from invoicing.services.open_draft import Hand
from trimops.accounts.actions import Action
from trimops.api.asked import YesOrNo
from trimops.api.fields import Day
from trimops.api.kinds import DoApi, RowApi, RowsApi, StepApi
from trimops.api.op import Filter, Op, Said
from trimops.api.rows import RowField
from trimops.kernel.clock import local_day
from trimops.kernel.errors import NotFound

ONE_DRAFT = ("farm", "business", "visit")


class ReasonWord(serializers.Serializer):  # type: ignore[type-arg]
    """Why it is done."""

    reason = Why()


class HeadWord(serializers.Serializer):  # type: ignore[type-arg]
    """What stands above and below the lines. What is left out stays; the reason is needed."""

    note = serializers.CharField(max_length=300, allow_blank=True)
    order_number = serializers.CharField(max_length=40, allow_blank=True)
    buyer_reference = serializers.CharField(max_length=60, allow_blank=True)
    prepaid = Amount(help_text="Paid before, with tax.")
    tax_point = Day(help_text="The last day of the work; later where its books are closed.")
    home_rate = Amount(
        places=8, allow_null=True, help_text="What one unit of the currency is in that of the country's tax."
    )
    reason = Why("Why: kept with the draft.")


class SendWord(serializers.Serializer):  # type: ignore[type-arg]
    """Whether it goes by mail as well."""

    send = serializers.BooleanField(
        default=False, help_text="To the farm's addresses; refused, and not issued, where it has none."
    )


class RunWord(serializers.Serializer):  # type: ignore[type-arg]
    """Which drafts, and whether they go by mail as well."""

    drafts = serializers.ListField(
        child=RowField(Invoice),
        min_length=1,
        max_length=200,
        required=False,
        help_text="Left out: all that are ready.",
    )
    send = serializers.BooleanField(default=False, help_text="A farm without an address gets no mail.")


class RunTold(serializers.Serializer):  # type: ignore[type-arg]
    """How many were asked for."""

    asked = serializers.IntegerField(min_value=0)


class AnewTold(serializers.Serializer):  # type: ignore[type-arg]
    """The draft made anew; null where nothing is left to bill and it is gone."""

    invoice = serializers.IntegerField(allow_null=True)


class DraftsApi(RowsApi[Invoice]):
    """Every draft, the oldest work first. A month's is ready when the month is over; a credit note goes by itself."""

    model = Invoice
    ops = {
        "get": Op(
            Action.SEE_MONEY,
            "list_drafts",
            "The drafts",
            shows=InvoiceRow,
            lists=True,
            filters={"farm": Filter(key_of(Farm), "farm_id")},
            orders={"tax_point": ("tax_point",), "id": ("id",)},
            query={"is_ready": YesOrNo(help_text="Those that an issue run takes.")},
        )
    }

    def rows(self) -> InvoiceQuerySet:
        rows: InvoiceQuerySet = Invoice.objects.within(self.scope).drafts()
        ready = ready_drafts(self.scope, local_day(self.now, self.seat.business.zone)).order_by().values("pk")
        wanted = self.asked.get("is_ready")
        if wanted is not None:
            rows = rows.filter(pk__in=ready) if wanted else rows.exclude(pk__in=ready)
        return rows.defer(*HEAVY)


class DraftApi(RowApi[Invoice]):
    """A draft with its lines and the reason of each, what was changed by hand, and what was left off.

    A change says why; the reason is kept with the draft. To delete it is to throw it away: its work is to be billed
    again. An issued invoice is no draft: 404 here.
    """

    model = Invoice
    ops = {
        "get": Op(Action.SEE_MONEY, "read_draft", "One draft", shows=DraftShown),
        "patch": Op(
            Action.KEEP_MONEY,
            "change_draft",
            "Change what stands above and below the lines",
            takes=HeadWord,
            shows=DraftShown,
            changes=True,
        ),
        "delete": Op(Action.KEEP_MONEY, "discard_draft", "Throw a draft away", status=204, changes=True),
    }

    def row(self, *, is_locked: bool = False) -> Invoice:
        found = super().row(is_locked=is_locked)
        if found.is_issued:
            raise NotFound("There is no such draft.")
        return found

    def change(self, row: Invoice, content: Said) -> Invoice:
        head = DraftHead(
            content.get("note", row.note),
            content.get("order_number", row.order_number),
            content.get("buyer_reference", row.buyer_reference),
            content.get("prepaid", row.prepaid),
            content.get("tax_point"),
            content.get("home_rate", row.home_rate),
        )
        hand = Hand(self.seat.user, self.now, content.get("reason", ""))
        return change_draft_head(invoice=row, head=head, hand=hand)

    def remove(self, row: Invoice) -> None:
        discard_draft(invoice=row, at=self.now)


class DraftAnewApi(StepApi[Invoice]):
    """The draft is made from the work alone: lines by hand, discounts and what was struck fall away."""

    model = Invoice
    related = ONE_DRAFT
    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "draft_anew",
            "Make a draft anew from the work",
            takes=ReasonWord,
            shows=AnewTold,
            repeats=True,
        )
    }

    def act(self, row: Invoice, content: Said) -> object:
        made = draft_anew(invoice=row, hand=Hand(self.seat.user, self.now, content["reason"]))
        return {"invoice": made.pk if made else None}


class IssueApi(StepApi[Invoice]):
    """The draft gets its number and is frozen with its papers. Whoever comes second is told `already_issued`.

    Refused too: `nothing_to_bill`, `period_locked`, `invoice_incomplete`, `credits_too_much`; with `send` `no_address`.
    """

    model = Invoice
    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "issue_draft",
            "Issue a draft",
            takes=SendWord,
            shows=InvoiceShown,
            repeats=True,
        )
    }

    def act(self, row: Invoice, content: Said) -> Invoice:
        issue = issue_and_send if content["send"] else issue_invoice
        return issue(invoice=row, at=self.now, by=self.seat.user)


class IssueRunApi(DoApi):
    """Many drafts are issued in the background, one after the other; what is refused stays a draft.

    They leave the list of drafts as they are issued. Credit notes and months that still run are not among those ready.
    """

    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "start_issue_run",
            "Issue many drafts",
            takes=RunWord,
            shows=RunTold,
            status=202,
            repeats=True,
        )
    }

    def act(self, content: Said) -> object:
        today = local_day(self.now, self.seat.business.zone)
        chosen: list[Invoice] = content.get("drafts") or list(ready_drafts(self.scope, today))
        return {"asked": start_issue_run(invoices=chosen, by=self.seat.user, send=content["send"])}

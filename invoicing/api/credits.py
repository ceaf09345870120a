"""Credit notes: what of an invoice can still be credited, and a note drafted."""

from rest_framework import serializers

from invoicing.api.draft_shown import DraftShown
from invoicing.api.money import CURRENCY, Amount, MoneyShown, Why, several
from invoicing.domain.credit_lines import CreditAsk
from invoicing.models import Invoice, InvoiceLine
from invoicing.selectors.credit_left import credit_left
from invoicing.services.credit_invoice import draft_credit_note
from trimops.accounts.actions import Action
from trimops.api.kinds import StepApi, ToldApi
from trimops.api.op import Op, Said
from trimops.api.rows import RowField


class LineLeft(serializers.Serializer):  # type: ignore[type-arg]
    """What is left of one line."""

    line = serializers.IntegerField(source="line_id")
    quantity = serializers.DecimalField(12, 4)
    net = MoneyShown("", help_text="Without tax.")


class CreditLeftTold(serializers.Serializer):  # type: ignore[type-arg]
    """What of each line can still be credited, notes still drafted counted; empty: all is credited."""

    currency = serializers.CharField(help_text=CURRENCY)
    lines = LineLeft(many=True)


class CreditLineWord(serializers.Serializer):  # type: ignore[type-arg]
    """Of one line so many, or so much without tax; neither: all that is left of it."""

    line = RowField(InvoiceLine)
    quantity = Amount(digits=12, required=False, allow_null=True)
    amount = Amount(required=False, allow_null=True, help_text="Without tax.")

    def validate(self, attrs: Said) -> Said:
        if attrs.get("quantity") and attrs.get("amount"):
            raise serializers.ValidationError({"amount": "Either how many or an amount, not both."})
        return attrs


class CreditWord(serializers.Serializer):  # type: ignore[type-arg]
    """What is credited, and why."""

    reason = Why("Stands on the credit note.", max_length=300)
    lines = several(
        CreditLineWord, required=False, min_length=1, max_length=500, help_text="Left out: all that is left."
    )
    work_may_be_billed_again = serializers.BooleanField(
        default=False, help_text="Of lines credited to the end; else the work stays billed by this invoice."
    )

    def validate_lines(self, lines: list[Said]) -> list[Said]:
        if len({one["line"].pk for one in lines}) < len(lines):
            raise serializers.ValidationError("A line stands here twice.")
        return lines


class CreditLeftApi(ToldApi):
    """What of an issued invoice can still be credited."""

    ops = {
        "get": Op(Action.SEE_MONEY, "read_credit_left", "What can still be credited", shows=CreditLeftTold)
    }

    def told(self) -> object:
        invoice = self.fetch(Invoice, self.kwargs["pk"])
        left = credit_left(invoice) if invoice.is_issued and not invoice.is_credit_note else {}
        return {"currency": invoice.currency, "lines": list(left.values())}


class CreditApi(StepApi[Invoice]):
    """The draft of a credit note that points back to the invoice; it is issued as any draft.

    Refused: `cannot_credit`.
    """

    model = Invoice
    related = ("business",)
    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "draft_credit_note",
            "Draft a credit note",
            takes=CreditWord,
            shows=DraftShown,
            status=201,
            repeats=True,
        )
    }

    def act(self, row: Invoice, content: Said) -> Invoice:
        lines: list[Said] | None = content.get("lines")
        return draft_credit_note(
            invoice=row,
            asks=None if lines is None else [_ask(line) for line in lines],
            reason=content["reason"],
            work_may_be_billed_again=content["work_may_be_billed_again"],
            at=self.now,
            by=self.seat.user,
        )


def _ask(line: Said) -> CreditAsk:
    return CreditAsk(line["line"].pk, line.get("quantity") or None, line.get("amount") or None)

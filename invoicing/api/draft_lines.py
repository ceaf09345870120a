"""Lines of a draft, and discounts and charges on the whole of it, changed by hand and with a reason."""

from decimal import Decimal

from rest_framework import serializers

from invoicing.api.draft_shown import DraftShown
from invoicing.api.drafts import ReasonWord
from invoicing.api.invoice_shown import LineShown
from invoicing.api.money import Amount, Why
from invoicing.domain.discount import Discount
from invoicing.models import DocumentAmount, Invoice, InvoiceLine, TaxRate
from invoicing.models.prices import TAX_CATEGORIES
from invoicing.services.add_line import HandLine, add_line
from invoicing.services.change_line import LineChange, change_line
from invoicing.services.open_draft import Hand
from invoicing.services.set_whole_amount import WholeChange, drop_whole_amount, set_whole_amount
from invoicing.services.strike_line import strike_line
from trimops.accounts.actions import Action
from trimops.api.kinds import RowApi, StepApi
from trimops.api.op import Op, Said
from trimops.api.rows import RowField
from trimops.kernel.errors import NotFound

HUNDRED = Decimal(100)


def percent_said(help_text: str) -> Amount:
    """Of 0 to 100, with two decimals; null where it is said as an amount, or not at all."""
    return Amount(digits=5, places=2, most=HUNDRED, required=False, allow_null=True, help_text=help_text)


class HandLineWord(serializers.Serializer):  # type: ignore[type-arg]
    """A line that no work gave rise to."""

    description = serializers.CharField(max_length=200)
    quantity = Amount(digits=12)
    unit_price = Amount(help_text="Without tax.")
    tax_rate = RowField(TaxRate)
    reason = Why("Why: kept with the draft.")


class LineWord(serializers.Serializer):  # type: ignore[type-arg]
    """What a line becomes. What is left out stays; the reason is needed, and of a discount it stands on the paper."""

    description = serializers.CharField(max_length=200)
    quantity = Amount(digits=12)
    discount_percent = percent_said("Off the line; null: none in percent.")
    discount_amount = Amount(
        required=False, allow_null=True, help_text="Off the line; null: none as an amount."
    )
    reason = Why("Why: kept with the draft.")


class WholeWord(serializers.Serializer):  # type: ignore[type-arg]
    """A discount or a charge: a percent or an amount; at one tax rate of the draft, or a percent at each."""

    is_charge = serializers.BooleanField(default=False)
    percent = percent_said("Either this")
    amount = Amount(required=False, allow_null=True, help_text="or this, without tax.")
    tax_category = serializers.ChoiceField(TAX_CATEGORIES, required=False, allow_null=True)
    tax_percent = percent_said("With the category: which of the draft's tax rates.")
    reason = Why("Stands on the paper.")

    def validate(self, attrs: dict[str, object]) -> dict[str, object]:
        if (attrs.get("tax_category") is None) != (attrs.get("tax_percent") is None):
            raise serializers.ValidationError({"tax_percent": "Name both of a tax rate, or neither."})
        return attrs


class DraftLinesApi(StepApi[Invoice]):
    """A line is put on a draft by hand; drafting anew leaves it. The draft as it is then is answered."""

    model = Invoice
    related = ("farm", "business")
    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "add_draft_line",
            "Put a line on a draft",
            takes=HandLineWord,
            shows=DraftShown,
            repeats=True,
        )
    }

    def act(self, row: Invoice, content: Said) -> Invoice:
        line = HandLine(
            content["description"], content["quantity"], content["unit_price"], content["tax_rate"]
        )
        return add_line(invoice=row, line=line, hand=Hand(self.seat.user, self.now, content["reason"]))


class DraftLineApi(RowApi[InvoiceLine]):
    """One line of a draft. Changed, it is the office's: drafting anew leaves it, with the work it holds.

    A line of an issued invoice is not there.
    """

    model = InvoiceLine
    related = ("invoice",)
    ops = {
        "get": Op(Action.SEE_MONEY, "read_draft_line", "One line of a draft", shows=LineShown),
        "patch": Op(
            Action.KEEP_MONEY,
            "change_draft_line",
            "Change a line of a draft",
            takes=LineWord,
            shows=LineShown,
            changes=True,
        ),
    }

    def row(self, *, is_locked: bool = False) -> InvoiceLine:
        found = super().row(is_locked=is_locked)
        if found.invoice.is_issued:
            raise NotFound("There is no such line on a draft.")
        return found

    def change(self, row: InvoiceLine, content: Said) -> InvoiceLine:
        change = LineChange(
            content.get("description", row.description),
            content.get("quantity", row.quantity),
            discount_of(row, content),
        )
        change_line(line=row, change=change, hand=Hand(self.seat.user, self.now, content.get("reason", "")))
        return self.fetch(InvoiceLine, row.pk, "invoice")


def discount_of(row: InvoiceLine, content: Said) -> Discount:
    """What was said of the discount; the row's own where nothing was."""
    if not {"discount_percent", "discount_amount"} & content.keys():
        is_percent = row.allowance_percent is not None
        return Discount(row.allowance_percent, None if is_percent else row.allowance or None)
    return Discount(content.get("discount_percent"), content.get("discount_amount"))


class LineStruckApi(StepApi[InvoiceLine]):
    """The line goes from the draft; its work is left unbilled, with the reason, and is not proposed again."""

    model = InvoiceLine
    related = ("invoice",)
    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "strike_draft_line",
            "Strike a line off a draft",
            takes=ReasonWord,
            shows=DraftShown,
            repeats=True,
        )
    }

    def act(self, row: InvoiceLine, content: Said) -> Invoice:
        return strike_line(line=row, hand=Hand(self.seat.user, self.now, content["reason"]))


class DraftAmountsApi(StepApi[Invoice]):
    """A discount or a charge on the whole of a draft. The draft as it is then is answered."""

    model = Invoice
    related = ("farm", "business")
    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "set_draft_amount",
            "Put a discount or a charge on a draft",
            takes=WholeWord,
            shows=DraftShown,
            repeats=True,
        )
    }

    def act(self, row: Invoice, content: Said) -> Invoice:
        category = content.get("tax_category")
        rate = None if category is None else (category, content["tax_percent"])
        discount = Discount(content.get("percent"), content.get("amount"))
        change = WholeChange(content["is_charge"], discount, rate)
        hand = Hand(self.seat.user, self.now, content["reason"])
        return set_whole_amount(invoice=row, change=change, hand=hand)


class AmountTakenOffApi(StepApi[DocumentAmount]):
    """A discount or a charge on the whole goes from the draft again."""

    model = DocumentAmount
    related = ("invoice",)
    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "drop_draft_amount",
            "Take a discount or a charge off a draft",
            takes=ReasonWord,
            shows=DraftShown,
            repeats=True,
        )
    }

    def act(self, row: DocumentAmount, content: Said) -> Invoice:
        return drop_whole_amount(amount=row, hand=Hand(self.seat.user, self.now, content["reason"]))

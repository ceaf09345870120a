"""Payments as the API shows them, and amounts that are set against invoices as they are said."""

from decimal import Decimal

from rest_framework import serializers

from farms.models import Farm
from invoicing.api.invoice_shown import AllocationShown
from invoicing.api.money import CURRENCY, Kept, MoneyShown, Told, paid_amount, several
from invoicing.domain.settling import PaymentMethod
from invoicing.models import Invoice, Payment
from invoicing.selectors.payment_rows import parts_of, with_rests
from trimops.api.fields import Day, OneOf
from trimops.api.op import Said
from trimops.api.rows import RowField

TOLD = ("received_on", "currency", "amount", "rest", "method", "reference", "payer_name", "note")


class PaymentRow(Kept):
    """Money that came in (below nought: it went back), and what of it is not used yet."""

    currency = serializers.CharField(read_only=True, max_length=3, help_text=CURRENCY)
    amount = MoneyShown(help_text="Below nought: money that went back to the farm.")
    rest = MoneyShown(help_text="Neither set against invoices nor paid back.")

    class Meta:
        model = Payment
        fields = [
            *("id", "farm", *TOLD, "bank_entry", "pays_back", "noted_at"),
            *("taken_back_at", "taken_back_because"),
        ]
        read_only_fields = fields


class PaymentShown(PaymentRow):
    """One payment with what it was set against, undone parts included, and what was paid back of it."""

    parts = AllocationShown(many=True, read_only=True)

    class Meta:
        model = Payment
        fields = [*PaymentRow.Meta.fields, "parts"]
        read_only_fields = fields

    def to_representation(self, instance: Payment) -> Told:  # type: ignore[override]
        (row,) = with_rests(self.context["scope"], [instance])
        # because: what it shows is read here, within the scope
        instance.__dict__ |= {"rest": row.rest, "parts": parts_of(instance)}
        return super().to_representation(instance)


class ShareWord(serializers.Serializer):  # type: ignore[type-arg]
    """So much against that invoice."""

    invoice = RowField(Invoice)
    amount = paid_amount("With tax.")


class SharesWord(serializers.Serializer):  # type: ignore[type-arg]
    """What is set against which invoices."""

    shares = several(ShareWord, min_length=1, max_length=500)

    def validate_shares(self, shares: list[Said]) -> list[Said]:
        return each_once(shares)


class PaymentWord(serializers.Serializer):  # type: ignore[type-arg]
    """Money that came in from one farm, in the business's currency. What is not shared out stays on its account."""

    farm = RowField(Farm)
    received_on = Day()
    amount = paid_amount("With tax.")
    method = OneOf(PaymentMethod)
    reference = serializers.CharField(max_length=140, allow_blank=True, default="")
    payer_name = serializers.CharField(max_length=140, allow_blank=True, default="")
    note = serializers.CharField(
        max_length=300, allow_blank=True, default="", help_text="For the office only."
    )
    shares = several(ShareWord, required=False, max_length=500)

    def validate_shares(self, shares: list[Said]) -> list[Said]:
        return each_once(shares)


class PaidBackWord(serializers.Serializer):  # type: ignore[type-arg]
    """Money that went back to the farm."""

    paid_on = Day()
    amount = paid_amount("Not more than is there to be paid back.")
    method = OneOf(PaymentMethod)
    note = serializers.CharField(max_length=300, allow_blank=True, default="")


def each_once(shares: list[Said]) -> list[Said]:
    """ValidationError where an invoice is named twice: which of the amounts is meant?"""
    if len({one["invoice"].pk for one in shares}) < len(shares):
        raise serializers.ValidationError("An invoice stands here twice.")
    return shares


def shares_of(content: Said) -> dict[int, Decimal]:
    """Key of an invoice -> amount, as the services take it."""
    return {one["invoice"].pk: one["amount"] for one in content.get("shares", ())}

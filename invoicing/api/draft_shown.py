"""A draft as staff see it: the invoice it would be, what was changed by hand, and what was left off."""

from rest_framework import serializers

from invoicing.api.invoice_shown import InvoiceShown
from invoicing.api.money import Kept, Told
from invoicing.models import BilledWork, DraftEdit, Invoice
from invoicing.selectors.line_work import left_off


class EditShown(Kept):
    """What somebody changed by hand, before and after, and why."""

    by = serializers.IntegerField(source="by_id", read_only=True, help_text="Id of the person.")

    class Meta:
        model = DraftEdit
        fields = ["at", "by", "what", "reason"]
        read_only_fields = fields


class LeftOffShown(Kept):
    """Work that was struck from the draft, and why."""

    class Meta:
        model = BilledWork
        fields = ["visit", "trim", "words", "not_billed_because"]
        read_only_fields = fields


class DraftShown(InvoiceShown):
    """A draft of an invoice or of a credit note."""

    edits = EditShown(many=True, read_only=True, source="kept_edits")
    left_off = LeftOffShown(many=True, read_only=True)

    class Meta:
        model = Invoice
        fields = [*InvoiceShown.Meta.fields, "edits", "left_off"]
        read_only_fields = fields

    def to_representation(self, instance: Invoice) -> Told:  # type: ignore[override]
        edits = DraftEdit.objects.within(self.context["scope"]).filter(invoice=instance)
        # because: what it shows is read here, within the scope
        instance.__dict__ |= {"kept_edits": list(edits), "left_off": left_off(instance)}
        return super().to_representation(instance)

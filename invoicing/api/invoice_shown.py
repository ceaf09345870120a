"""Invoices, credit notes and drafts as the API shows them."""

from rest_framework import serializers

from invoicing.api.money import CURRENCY, Kept, MoneyShown, Told
from invoicing.domain.paid_state import PaidState, paid_state
from invoicing.models import Allocation, DocumentAmount, Invoice, InvoiceLine
from invoicing.selectors.told_invoice import told_invoice
from trimops.api.fields import OneOf
from trimops.kernel.clock import local_day

TOTALS = ("net", "tax", "gross", "prepaid", "payable", "settled", "open_amount")


class PaidShown(OneOf):
    """How far it is paid, as of today."""

    def __init__(self) -> None:
        super().__init__(
            PaidState, read_only=True, allow_null=True, help_text="null: a draft, or a credit note."
        )

    def get_attribute(self, instance: Invoice) -> PaidState | None:
        if not instance.is_issued or instance.is_credit_note:
            return None
        today = local_day(self.context["now"], self.context["seat"].business.zone)
        return paid_state(instance.payable, instance.settled, instance.due_on, today)


class InvoiceRow(Kept):
    """An invoice or a credit note as a list shows it. Amounts are positive on both kinds."""

    currency = serializers.CharField(read_only=True, max_length=3, help_text=CURRENCY)
    net = MoneyShown(help_text="Without tax.")
    tax = MoneyShown()
    gross = MoneyShown(help_text="With tax.")
    prepaid = MoneyShown(help_text="Paid before it was issued.")
    payable = MoneyShown(help_text="To be paid, or of a credit note to be set off.")
    settled = MoneyShown(help_text="Of that so much is paid, set off or written off.")
    open_amount = MoneyShown(help_text="What is left of it.")
    paid = PaidShown()

    class Meta:
        model = Invoice
        fields = [
            *(
                "id",
                "kind",
                "state",
                "number",
                "farm",
                "payer",
                "visit",
                "corrects",
                "issued_on",
                "tax_point",
            ),
            *("due_on", "period_from", "period_until", "currency", *TOTALS, "is_open", "paid"),
        ]
        read_only_fields = fields


class LineShown(Kept):
    """One line: what, how many, at which price and tax, less what."""

    unit_price = serializers.DecimalField(14, 4, read_only=True, help_text="Without tax.")
    allowance = MoneyShown("invoice.currency", help_text="Taken off the line.")
    net = MoneyShown("invoice.currency")
    why = serializers.CharField(read_only=True, allow_null=True, help_text="Why it is there; for staff.")
    is_by_hand = serializers.BooleanField(read_only=True, allow_null=True, help_text="For staff.")
    for_staff = ("why", "is_by_hand")

    class Meta:
        model = InvoiceLine
        fields = [
            *("id", "position", "item", "visit", "done_on", "description", "quantity", "unit", "unit_price"),
            *("allowance", "allowance_percent", "allowance_reason", "tax_category", "tax_percent"),
            *("tax_reason", "tax_reason_code", "net", "credits", "why", "is_by_hand"),
        ]
        read_only_fields = fields


class WholeShown(Kept):
    """A discount on the whole invoice, or a charge, at one tax rate."""

    amount = MoneyShown("invoice.currency")
    base = MoneyShown("invoice.currency", allow_null=True, help_text="What the percent is of.")

    class Meta:
        model = DocumentAmount
        fields = ["id", "is_charge", "amount", "base", "percent", "reason", "tax_category", "tax_percent"]
        read_only_fields = fields


class TaxShareShown(serializers.Serializer):  # type: ignore[type-arg]
    """What is taxed at one rate, and the tax."""

    category = serializers.CharField(help_text="Of UNCL 5305, as EN 16931 uses it.")
    percent = serializers.DecimalField(5, 2)
    taxable = MoneyShown("")
    tax = MoneyShown("")


class AllocationShown(Kept):
    """A part of a payment, a credit note or a write-off, set against one invoice."""

    currency = serializers.CharField(source="invoice.currency", read_only=True, help_text=CURRENCY)
    amount = MoneyShown("invoice.currency")

    class Meta:
        model = Allocation
        fields = [
            *("id", "kind", "invoice", "payment", "credit_note", "currency", "amount", "on", "reason"),
            *("noted_at", "undone_at", "undone_because"),
        ]
        read_only_fields = fields


class PartyShown(serializers.Serializer):  # type: ignore[type-arg]
    """Who sells or buys, as it stands on the paper; all empty on a draft."""

    name = serializers.CharField(default="")
    address = serializers.CharField(default="")
    country = serializers.CharField(default="")
    vat_number = serializers.CharField(default="")
    email = serializers.CharField(default="")
    phone = serializers.CharField(default="")


class PaymentWay(serializers.Serializer):  # type: ignore[type-arg]
    """How to pay, as it was printed."""

    details = serializers.CharField(default="")
    iban = serializers.CharField(default="")
    bic = serializers.CharField(default="")
    account_name = serializers.CharField(default="")
    credit_terms = serializers.CharField(default="")


class InvoiceShown(InvoiceRow):
    """One invoice with its lines, its tax and what was set against it."""

    line_sum = MoneyShown(help_text="Of the lines, without tax.")
    allowances = MoneyShown(help_text="Taken off the whole.")
    charges = MoneyShown(help_text="Put on the whole.")
    rounding = MoneyShown()
    seller = PartyShown(read_only=True)
    buyer = PartyShown(read_only=True)
    payment = PaymentWay(read_only=True)
    lines = LineShown(many=True, read_only=True, source="told.lines")
    document_amounts = WholeShown(many=True, read_only=True, source="told.document_amounts")
    tax_shares = TaxShareShown(many=True, read_only=True, source="told.tax_shares")
    settled_by = AllocationShown(many=True, read_only=True, source="told.settled_by", help_text="For staff.")
    credit_notes = serializers.ListField(
        child=serializers.IntegerField(),
        read_only=True,
        source="told.credit_notes",
        help_text="Issued ones that correct it.",
    )
    no_xml_because = serializers.CharField(
        read_only=True, allow_null=True, default=None, source="told.papers.no_xml_because"
    )

    class Meta:
        model = Invoice
        fields = [
            *InvoiceRow.Meta.fields,
            *("reason", "note", "order_number", "buyer_reference", "tax_name", "line_sum", "allowances"),
            *("charges", "rounding", "home_rate", "creditor_reference", "drafted_at", "issued_at"),
            *("seller", "buyer", "payment", "lines", "document_amounts", "tax_shares", "settled_by"),
            *("credit_notes", "no_xml_because"),
        ]
        read_only_fields = fields

    def to_representation(self, instance: Invoice) -> Told:  # type: ignore[override]
        # because: several of the fields read it, and it is reckoned once
        instance.__dict__["told"] = told_invoice(self.context["scope"], instance)
        return super().to_representation(instance)

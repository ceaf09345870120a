from decimal import Decimal
from typing import ClassVar

from django.db import models

from farms.models import Farm, Payer
from invoicing.domain.amounts import RoundingRule
from invoicing.models.stays import IssuedStays, RowsThatStay
from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel
from visits.models import Visit

OPEN_AMOUNT = models.F("payable") - models.F("settled")
"""`Invoice.open_amount` where rows are summed."""


class InvoiceState(models.TextChoices):
    DRAFT = "draft", "Draft"
    ISSUED = "issued", "Issued"


class InvoiceKind(models.TextChoices):
    INVOICE = "invoice", "Invoice"
    CREDIT_NOTE = "credit_note", "Credit note"


class InvoiceQuerySet(RowsThatStay["Invoice"]):
    state_path = "state"

    def drafts(self) -> "InvoiceQuerySet":
        return self.filter(state=InvoiceState.DRAFT)

    def issued(self) -> "InvoiceQuerySet":
        return self.filter(state=InvoiceState.ISSUED)

    def bills(self) -> "InvoiceQuerySet":
        """Without credit notes."""
        return self.filter(kind=InvoiceKind.INVOICE)

    def credit_notes(self) -> "InvoiceQuerySet":
        return self.filter(kind=InvoiceKind.CREDIT_NOTE)


class NumberSeries(TenantModel):
    """The counter of invoice numbers for one prefix and year (0: it runs on). Locked while a number is taken."""

    prefix = models.CharField(max_length=12)
    year = models.PositiveSmallIntegerField()
    last = models.PositiveIntegerField(default=0)

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["business", "prefix", "year"], name="one_series_per_prefix_and_year"
            )
        ]
        verbose_name_plural = "number series"

    def __str__(self) -> str:
        return f"{self.prefix} {self.year}: {self.last}"


class InvoicePapers(TenantModel):
    """The documents of one issued invoice as they left the house; no e-invoice (empty) where none can be made."""

    pdf = models.BinaryField()
    pdf_sha256 = models.CharField(max_length=64)
    cii = models.BinaryField(default=b"", blank=True)
    cii_sha256 = models.CharField(max_length=64, blank=True)
    ubl = models.BinaryField(default=b"", blank=True)
    ubl_sha256 = models.CharField(max_length=64, blank=True)
    no_xml_because = models.CharField(max_length=200, blank=True)

    farm_path: ClassVar[str | None] = "invoice__farm_id"

    class Meta:
        verbose_name_plural = "invoice papers"
        constraints = [
            models.CheckConstraint(
                condition=(~models.Q(cii_sha256="") & ~models.Q(ubl_sha256=""))
                | ~models.Q(no_xml_because=""),
                name="papers_have_xml_or_say_why_not",
            )
        ]

    def __str__(self) -> str:
        return f"papers {self.pk}"


class Invoice(TenantModel):
    """An invoice or a credit note: a draft until issued, then frozen with its parties, totals and papers.

    All amounts are positive on both kinds (EN 16931); `sign` says which way they count. What was paid lies outside
    of the frozen part, in `settled` and `is_open`, kept by `settle_invoice`.
    """

    kind = models.CharField(
        max_length=11, choices=InvoiceKind.choices, default=InvoiceKind.INVOICE.value, db_index=True
    )
    farm = models.ForeignKey(Farm, on_delete=models.PROTECT, related_name="invoices")
    payer = models.ForeignKey(Payer, on_delete=models.PROTECT, related_name="invoices", null=True, blank=True)
    visit = models.ForeignKey(
        Visit,
        on_delete=models.PROTECT,
        related_name="invoices",
        null=True,
        blank=True,
        help_text="The visit it bills, if it is one.",
    )
    corrects = models.ForeignKey(
        "self", on_delete=models.PROTECT, related_name="credit_notes", null=True, blank=True
    )
    reason = models.CharField(max_length=300, blank=True, help_text="Why a credit note corrects.")
    state = models.CharField(
        max_length=8, choices=InvoiceState.choices, default=InvoiceState.DRAFT.value, db_index=True
    )
    currency = models.CharField(max_length=3)
    rounding_rule = models.CharField(
        max_length=12, choices=choices_of(RoundingRule), default=RoundingRule.PER_RATE.value
    )
    tax_name = models.CharField(max_length=20, default="VAT")
    drafted_at = models.DateTimeField()
    note = models.CharField(max_length=300, blank=True)
    order_number = models.CharField(max_length=40, blank=True)
    buyer_reference = models.CharField(max_length=60, blank=True)
    period_from = models.DateField(null=True, blank=True)
    period_until = models.DateField(null=True, blank=True)

    number = models.CharField(max_length=40, blank=True)
    issued_on = models.DateField(null=True, blank=True, db_index=True)
    issued_at = models.DateTimeField(null=True, blank=True)
    tax_point = models.DateField()
    due_on = models.DateField(null=True, blank=True)
    issued_by = models.ForeignKey(
        "accounts.User", on_delete=models.PROTECT, related_name="+", null=True, blank=True
    )
    seller = models.JSONField(default=dict, blank=True)
    buyer = models.JSONField(default=dict, blank=True)
    payment = models.JSONField(default=dict, blank=True, help_text="How to pay, as it was printed.")
    creditor_reference = models.CharField(max_length=25, blank=True)
    line_sum = models.DecimalField(max_digits=14, decimal_places=4, default=0)
    allowances = models.DecimalField(max_digits=14, decimal_places=4, default=0)
    charges = models.DecimalField(max_digits=14, decimal_places=4, default=0)
    net = models.DecimalField(max_digits=14, decimal_places=4, default=0)
    tax = models.DecimalField(max_digits=14, decimal_places=4, default=0)
    gross = models.DecimalField(max_digits=14, decimal_places=4, default=0)
    prepaid = models.DecimalField(max_digits=14, decimal_places=4, default=0)
    rounding = models.DecimalField(max_digits=14, decimal_places=4, default=0)
    home_rate = models.DecimalField(
        max_digits=14,
        decimal_places=8,
        null=True,
        blank=True,
        help_text="What one unit of the currency is in that of the country's tax, where they differ.",
    )
    payable = models.DecimalField(max_digits=14, decimal_places=4, default=0)
    papers = models.OneToOneField(
        InvoicePapers, on_delete=models.PROTECT, related_name="invoice", null=True, blank=True
    )

    settled = models.DecimalField(max_digits=14, decimal_places=4, default=0)
    is_open = models.BooleanField(default=False, db_index=True)

    farm_path: ClassVar[str | None] = "farm_id"
    objects: ClassVar = InvoiceQuerySet.as_manager()

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["business", "number"],
                condition=~models.Q(number=""),
                name="invoice_number_once_per_business",
            ),
            models.UniqueConstraint(
                fields=["visit"],
                condition=models.Q(visit__isnull=False, state="draft", kind="invoice"),
                name="one_draft_per_visit",
            ),
            models.UniqueConstraint(
                fields=["farm", "period_from", "currency"],
                condition=models.Q(
                    visit__isnull=True, period_from__isnull=False, state="draft", kind="invoice"
                ),
                name="one_draft_per_farm_and_month",
            ),
            models.CheckConstraint(
                condition=models.Q(state="draft", number="", papers__isnull=True)
                | (
                    models.Q(state="issued", issued_on__isnull=False, papers__isnull=False)
                    & ~models.Q(number="")
                ),
                name="issued_invoice_is_complete",
            ),
            models.CheckConstraint(
                condition=models.Q(kind="invoice", corrects__isnull=True)
                | (models.Q(kind="credit_note", corrects__isnull=False) & ~models.Q(reason="")),
                name="credit_note_points_back_and_says_why",
            ),
        ]
        indexes = [
            models.Index(fields=["business", "state", "-issued_on", "-id"], name="invoices_newest_first"),
            models.Index(
                fields=["business", "due_on"], condition=models.Q(is_open=True), name="open_invoices_by_day"
            ),
            models.Index(fields=["business", "farm", "issued_on"], name="invoices_of_a_farm"),
        ]
        ordering = ["-drafted_at", "-id"]

    def __str__(self) -> str:
        return self.number or f"draft {self.pk}"

    def delete(self, *args: object, **kwargs: object) -> tuple[int, dict[str, int]]:
        """A draft and what hangs on it; IssuedStays for what was issued."""
        if self.is_issued:
            raise IssuedStays
        return super().delete(*args, **kwargs)

    delete.alters_data = True  # type: ignore[attr-defined]

    @property
    def is_issued(self) -> bool:
        return self.state == InvoiceState.ISSUED

    @property
    def is_credit_note(self) -> bool:
        return self.kind == InvoiceKind.CREDIT_NOTE

    @property
    def sign(self) -> int:
        """-1 for a credit note: what it counts for in sums."""
        return -1 if self.is_credit_note else 1

    @property
    def open_amount(self) -> Decimal:
        """What is still to be paid (or, of a credit note, still to be set off)."""
        return self.payable - self.settled

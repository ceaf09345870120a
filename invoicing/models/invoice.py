from typing import ClassVar

from django.db import models

from farms.models import Farm
from invoicing.domain.pricing import PriceItem
from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet
from visits.models import Visit


class InvoiceState(models.TextChoices):
    DRAFT = "draft", "Draft"
    ISSUED = "issued", "Issued"


class InvoiceQuerySet(TenantQuerySet["Invoice"]):
    def drafts(self) -> "InvoiceQuerySet":
        return self.filter(state=InvoiceState.DRAFT)

    def issued(self) -> "InvoiceQuerySet":
        return self.filter(state=InvoiceState.ISSUED)


class NumberSeries(TenantModel):
    """The counter of invoice numbers for one prefix and year. Its row is locked while a number is taken."""

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


class Invoice(TenantModel):
    """A draft until issued; then frozen: number, parties, totals, the PDF and its SHA-256 as they were."""

    farm = models.ForeignKey(Farm, on_delete=models.PROTECT, related_name="invoices")
    visit = models.ForeignKey(Visit, on_delete=models.PROTECT, related_name="invoices", null=True, blank=True)
    state = models.CharField(
        max_length=8, choices=InvoiceState.choices, default=InvoiceState.DRAFT.value, db_index=True
    )
    currency = models.CharField(max_length=3)
    drafted_at = models.DateTimeField()
    note = models.CharField(max_length=300, blank=True)

    number = models.CharField(max_length=40, blank=True)
    issued_on = models.DateField(null=True, blank=True)
    tax_point = models.DateField()
    due_on = models.DateField(null=True, blank=True)
    issued_by = models.ForeignKey(
        "accounts.User", on_delete=models.PROTECT, related_name="+", null=True, blank=True
    )
    seller = models.JSONField(default=dict, blank=True)
    buyer = models.JSONField(default=dict, blank=True)
    net = models.DecimalField(max_digits=12, decimal_places=2, default=0)
    tax = models.DecimalField(max_digits=12, decimal_places=2, default=0)
    gross = models.DecimalField(max_digits=12, decimal_places=2, default=0)
    pdf = models.BinaryField(null=True, blank=True)
    pdf_sha256 = models.CharField(max_length=64, blank=True)

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
                condition=models.Q(visit__isnull=False),
                name="a_visit_is_billed_once",
            ),
            models.CheckConstraint(
                condition=models.Q(state="draft")
                | (~models.Q(number="") & models.Q(issued_on__isnull=False) & models.Q(pdf__isnull=False)),
                name="issued_invoice_is_complete",
            ),
        ]
        ordering = ["-drafted_at", "-id"]

    def __str__(self) -> str:
        return self.number or f"draft {self.pk}"

    @property
    def is_issued(self) -> bool:
        return self.state == InvoiceState.ISSUED


class InvoiceLine(TenantModel):
    """One line: what, how many, at which price and tax, and why it is there."""

    invoice = models.ForeignKey(Invoice, on_delete=models.CASCADE, related_name="lines")
    position = models.PositiveSmallIntegerField()
    item = models.CharField(max_length=12, choices=choices_of(PriceItem))
    description = models.CharField(max_length=200)
    quantity = models.DecimalField(max_digits=10, decimal_places=2)
    unit = models.CharField(max_length=3)
    unit_price = models.DecimalField(max_digits=10, decimal_places=2)
    tax_category = models.CharField(max_length=2)
    tax_percent = models.DecimalField(max_digits=5, decimal_places=2)
    net = models.DecimalField(max_digits=12, decimal_places=2)
    why = models.CharField(max_length=200, blank=True)

    farm_path: ClassVar[str | None] = "invoice__farm_id"

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["invoice", "position"], name="each_line_position_once")
        ]
        ordering = ["position"]

    def __str__(self) -> str:
        return self.description

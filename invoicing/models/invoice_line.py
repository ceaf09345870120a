"""What stands on an invoice, which work it bills, and what the office changed on the draft."""

from typing import ClassVar

from django.db import models

from invoicing.domain.pricing import PriceItem
from invoicing.models.invoice import Invoice
from invoicing.models.stays import PartOfInvoice, RowsThatStay
from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel
from visits.models import Trim, Visit


class InvoiceLine(PartOfInvoice):
    """One line: what, how many, at which price and tax, less what, and why it is there."""

    invoice = models.ForeignKey(Invoice, on_delete=models.CASCADE, related_name="lines")
    position = models.PositiveSmallIntegerField()
    item = models.CharField(max_length=12, choices=choices_of(PriceItem))
    visit = models.ForeignKey(Visit, on_delete=models.PROTECT, related_name="+", null=True, blank=True)
    done_on = models.DateField(null=True, blank=True)
    description = models.CharField(max_length=200)
    quantity = models.DecimalField(max_digits=12, decimal_places=4)
    unit = models.CharField(max_length=3)
    unit_price = models.DecimalField(max_digits=14, decimal_places=4)
    allowance = models.DecimalField(max_digits=14, decimal_places=4, default=0)
    allowance_percent = models.DecimalField(max_digits=7, decimal_places=4, null=True, blank=True)
    allowance_reason = models.CharField(max_length=200, blank=True)
    tax_category = models.CharField(max_length=2)
    tax_percent = models.DecimalField(max_digits=5, decimal_places=2)
    tax_reason = models.CharField(max_length=200, blank=True)
    tax_reason_code = models.CharField(max_length=30, blank=True)
    net = models.DecimalField(max_digits=14, decimal_places=4)
    why = models.CharField(max_length=200, blank=True)
    credits = models.ForeignKey(
        "self", on_delete=models.PROTECT, related_name="credited_by", null=True, blank=True
    )
    is_by_hand = models.BooleanField(default=False, help_text="Put in by the office; drafting leaves it.")

    farm_path: ClassVar[str | None] = "invoice__farm_id"
    objects: ClassVar = RowsThatStay["InvoiceLine"].as_manager()

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["invoice", "position"], name="each_line_position_once")
        ]
        ordering = ["position"]

    def __str__(self) -> str:
        return self.description


class DocumentAmount(PartOfInvoice):
    """A discount on the whole invoice, or a charge (BG-20, BG-21), at the tax that it changes."""

    invoice = models.ForeignKey(Invoice, on_delete=models.CASCADE, related_name="document_amounts")
    is_charge = models.BooleanField(default=False)
    amount = models.DecimalField(max_digits=14, decimal_places=4)
    base = models.DecimalField(max_digits=14, decimal_places=4, null=True, blank=True)
    percent = models.DecimalField(max_digits=7, decimal_places=4, null=True, blank=True)
    reason = models.CharField(max_length=200)
    tax_category = models.CharField(max_length=2)
    tax_percent = models.DecimalField(max_digits=5, decimal_places=2)
    tax_reason = models.CharField(max_length=200, blank=True)
    tax_reason_code = models.CharField(max_length=30, blank=True)

    farm_path: ClassVar[str | None] = "invoice__farm_id"
    objects: ClassVar = RowsThatStay["DocumentAmount"].as_manager()

    class Meta:
        constraints = [
            models.CheckConstraint(condition=models.Q(amount__gte=0), name="document_amount_is_not_negative")
        ]
        ordering = ["id"]

    def __str__(self) -> str:
        return self.reason


class BilledWork(PartOfInvoice):
    """One piece of work that a line bills; `key` names it for good, and while it `holds` no other line may.

    Without a line it is work that the office left unbilled, and why: on a draft (`invoice`) or of a visit as a whole.
    `credit_line` is the line of a credit note that credits it; when that note is issued it stops holding.
    """

    invoice = models.ForeignKey(
        Invoice, on_delete=models.CASCADE, related_name="billed_work", null=True, blank=True
    )
    line = models.ForeignKey(
        InvoiceLine, on_delete=models.CASCADE, related_name="billed_work", null=True, blank=True
    )
    visit = models.ForeignKey(Visit, on_delete=models.PROTECT, related_name="billed_work")
    trim = models.ForeignKey(Trim, on_delete=models.SET_NULL, related_name="+", null=True, blank=True)
    key = models.CharField(max_length=120)
    words = models.CharField(max_length=200, blank=True, help_text="What was done, as it was when drafted.")
    holds = models.BooleanField(default=True)
    not_billed_because = models.CharField(max_length=200, blank=True)
    credit_line = models.ForeignKey(
        InvoiceLine, on_delete=models.SET_NULL, related_name="lets_go", null=True, blank=True
    )

    farm_path: ClassVar[str | None] = None
    objects: ClassVar = RowsThatStay["BilledWork"].as_manager()

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["business", "key"], condition=models.Q(holds=True), name="work_is_billed_once"
            ),
            models.CheckConstraint(
                condition=models.Q(line__isnull=False, invoice__isnull=False)
                | (models.Q(line__isnull=True) & ~models.Q(not_billed_because="")),
                name="unbilled_work_says_why",
            ),
        ]
        verbose_name_plural = "billed work"

    def __str__(self) -> str:
        return self.key


class LateWork(TenantModel):
    """A visit whose work is no longer what was billed: shown until it is billed, credited or left unbilled."""

    visit = models.OneToOneField(Visit, on_delete=models.CASCADE, related_name="late_work")
    found_at = models.DateTimeField()
    added = models.PositiveSmallIntegerField(help_text="Pieces of work that no invoice bills.")
    gone = models.PositiveSmallIntegerField(help_text="Pieces billed that the work no longer shows.")

    farm_path: ClassVar[str | None] = None

    class Meta:
        verbose_name_plural = "late work"

    def __str__(self) -> str:
        return f"visit {self.visit_id}: {self.added} more, {self.gone} fewer"


class DraftEdit(TenantModel):
    """What somebody changed on a draft by hand, and why; kept after issuing."""

    invoice = models.ForeignKey(Invoice, on_delete=models.CASCADE, related_name="edits")
    at = models.DateTimeField()
    by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")
    what = models.CharField(max_length=300, help_text="Before and after, in words.")
    reason = models.CharField(max_length=200)

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["at", "id"]

    def __str__(self) -> str:
        return self.what

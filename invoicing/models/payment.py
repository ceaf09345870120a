"""Money that came in, and what it was set against."""

from typing import ClassVar

from django.db import models

from farms.models import Farm
from invoicing.domain.settling import PaymentMethod, SettledBy
from invoicing.models.bank import BankEntry
from invoicing.models.invoice import Invoice
from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet


class PaymentQuerySet(TenantQuerySet["Payment"]):
    def standing(self) -> "PaymentQuerySet":
        """Without those taken back."""
        return self.filter(taken_back_at__isnull=True)


class Payment(TenantModel):
    """Money received (negative: paid back). What is not set against invoices stays on the farm's account."""

    farm = models.ForeignKey(Farm, on_delete=models.PROTECT, related_name="payments")
    received_on = models.DateField(db_index=True)
    amount = models.DecimalField(max_digits=14, decimal_places=4)
    currency = models.CharField(max_length=3)
    method = models.CharField(max_length=8, choices=choices_of(PaymentMethod))
    reference = models.CharField(max_length=140, blank=True)
    payer_name = models.CharField(max_length=140, blank=True)
    note = models.CharField(max_length=300, blank=True)
    bank_entry = models.ForeignKey(
        BankEntry, on_delete=models.PROTECT, related_name="payments", null=True, blank=True
    )
    pays_back = models.ForeignKey(
        "self",
        on_delete=models.PROTECT,
        related_name="paid_back",
        null=True,
        blank=True,
        help_text="The payment whose rest goes back to the farm.",
    )
    noted_at = models.DateTimeField()
    noted_by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")
    taken_back_at = models.DateTimeField(null=True, blank=True)
    taken_back_by = models.ForeignKey(
        "accounts.User", on_delete=models.PROTECT, related_name="+", null=True, blank=True
    )
    taken_back_because = models.CharField(max_length=200, blank=True)

    farm_path: ClassVar[str | None] = "farm_id"
    objects: ClassVar = PaymentQuerySet.as_manager()

    class Meta:
        constraints = [
            models.CheckConstraint(condition=~models.Q(amount=0), name="payment_is_not_nothing"),
            models.CheckConstraint(
                condition=models.Q(taken_back_at__isnull=True) | ~models.Q(taken_back_because=""),
                name="payment_taken_back_says_why",
            ),
            models.CheckConstraint(
                condition=models.Q(pays_back__isnull=True) | models.Q(amount__lt=0),
                name="only_money_out_pays_back",
            ),
            models.UniqueConstraint(
                fields=["bank_entry"],
                condition=models.Q(taken_back_at__isnull=True, bank_entry__isnull=False),
                name="bank_entry_is_booked_once",
            ),
        ]
        ordering = ["-received_on", "-id"]

    def __str__(self) -> str:
        return f"{self.amount} {self.currency} on {self.received_on}"


class AllocationQuerySet(TenantQuerySet["Allocation"]):
    def standing(self) -> "AllocationQuerySet":
        """Without those undone."""
        return self.filter(undone_at__isnull=True)


class Allocation(TenantModel):
    """A part of a payment, a credit note or a write-off set against one invoice.

    A credit note that is set off has `credit_note` and no payment; a write-off has neither, and a reason. On a credit
    note that is paid back, `invoice` is the credit note and the payment is negative.
    """

    invoice = models.ForeignKey(Invoice, on_delete=models.PROTECT, related_name="allocations")
    kind = models.CharField(max_length=9, choices=choices_of(SettledBy))
    payment = models.ForeignKey(
        Payment, on_delete=models.PROTECT, related_name="allocations", null=True, blank=True
    )
    credit_note = models.ForeignKey(
        Invoice, on_delete=models.PROTECT, related_name="set_off", null=True, blank=True
    )
    amount = models.DecimalField(max_digits=14, decimal_places=4)
    on = models.DateField()
    reason = models.CharField(max_length=200, blank=True)
    noted_at = models.DateTimeField()
    noted_by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")
    undone_at = models.DateTimeField(null=True, blank=True)
    undone_because = models.CharField(max_length=200, blank=True)

    farm_path: ClassVar[str | None] = "invoice__farm_id"
    objects: ClassVar = AllocationQuerySet.as_manager()

    class Meta:
        constraints = [
            models.CheckConstraint(condition=models.Q(amount__gt=0), name="allocation_is_positive"),
            models.CheckConstraint(
                condition=models.Q(kind="payment", payment__isnull=False, credit_note__isnull=True)
                | models.Q(kind="credit", payment__isnull=True, credit_note__isnull=False)
                | (
                    models.Q(kind="write_off", payment__isnull=True, credit_note__isnull=True)
                    & ~models.Q(reason="")
                ),
                name="allocation_says_what_settles",
            ),
        ]
        indexes = [models.Index(fields=["business", "on"], name="allocations_by_day")]
        ordering = ["on", "id"]

    def __str__(self) -> str:
        return f"{self.amount} against {self.invoice_id}"

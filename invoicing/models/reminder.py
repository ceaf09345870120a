"""Reminders of what is overdue, and the rates that interest is reckoned by."""

from decimal import Decimal
from typing import ClassVar

from django.db import models

from invoicing.domain.reminder_steps import ReminderState
from invoicing.models.invoice import Invoice
from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel


class ReferenceRate(TenantModel):
    """The rate of the central bank that late-payment law refers to, from a day on."""

    percent = models.DecimalField(max_digits=6, decimal_places=3)
    valid_from = models.DateField()
    source = models.CharField(max_length=200, help_text="Where the rate was read.")

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["business", "valid_from"], name="one_reference_rate_per_day")
        ]
        ordering = ["-valid_from"]

    def __str__(self) -> str:
        return f"{self.percent} % from {self.valid_from}"


class Reminder(TenantModel):
    """One step of reminding of one invoice: proposed by the program, sent only when a person approved."""

    invoice = models.ForeignKey(Invoice, on_delete=models.CASCADE, related_name="reminders")
    step = models.PositiveSmallIntegerField()
    state = models.CharField(
        max_length=9, choices=choices_of(ReminderState), default=ReminderState.PROPOSED.value, db_index=True
    )
    proposed_at = models.DateTimeField()
    decided_at = models.DateTimeField(null=True, blank=True)
    decided_by = models.ForeignKey(
        "accounts.User", on_delete=models.PROTECT, related_name="+", null=True, blank=True
    )
    dropped_because = models.CharField(max_length=200, blank=True)
    open_amount = models.DecimalField(max_digits=14, decimal_places=4, default=0)
    interest = models.DecimalField(max_digits=14, decimal_places=4, default=0)
    fixed_sum = models.DecimalField(max_digits=14, decimal_places=4, default=0)
    reckoned_on = models.DateField(null=True, blank=True)
    working = models.TextField(blank=True, help_text="How the interest was reckoned.")
    pdf = models.BinaryField(null=True, blank=True)
    pdf_sha256 = models.CharField(max_length=64, blank=True)

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [models.UniqueConstraint(fields=["invoice", "step"], name="each_reminder_step_once")]
        ordering = ["-proposed_at", "-id"]

    def __str__(self) -> str:
        return f"reminder {self.step} of invoice {self.invoice_id}"

    @property
    def claimed(self) -> Decimal:
        """All that an approved one asks for."""
        return self.open_amount + self.interest + self.fixed_sum

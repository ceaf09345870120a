"""Papers on their way, and the link that opens one."""

import uuid
from datetime import datetime
from typing import ClassVar

from django.db import models

from farms.models import Farm
from invoicing.domain.sending_states import SendingState, SentPaper
from invoicing.models.invoice import Invoice
from invoicing.models.reminder import Reminder
from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel


class Sending(TenantModel):
    """One paper to one address. A mail counts as handed over when the mail server took it, never before."""

    paper = models.CharField(max_length=9, choices=choices_of(SentPaper))
    farm = models.ForeignKey(Farm, on_delete=models.PROTECT, related_name="sendings")
    invoice = models.ForeignKey(
        Invoice, on_delete=models.CASCADE, related_name="sendings", null=True, blank=True
    )
    reminder = models.ForeignKey(
        Reminder, on_delete=models.CASCADE, related_name="sendings", null=True, blank=True
    )
    attachment = models.BinaryField(null=True, blank=True, help_text="Of a statement of account.")
    attachment_name = models.CharField(max_length=100, blank=True)
    address = models.EmailField()
    with_xml = models.BooleanField(default=False)
    with_link = models.BooleanField(
        default=False, help_text="The mail ends with a secret address that opens the invoice."
    )
    subject = models.CharField(max_length=200)
    body = models.TextField()
    message_id = models.UUIDField(default=uuid.uuid4, editable=False, unique=True)
    state = models.CharField(
        max_length=12, choices=choices_of(SendingState), default=SendingState.QUEUED.value, db_index=True
    )
    tries = models.PositiveSmallIntegerField(default=0)
    next_try_at = models.DateTimeField(null=True, blank=True, db_index=True)
    began_at = models.DateTimeField(null=True, blank=True, help_text="When it was last begun.")
    handed_over_at = models.DateTimeField(null=True, blank=True)
    last_words = models.CharField(max_length=500, blank=True, help_text="What the mail server said.")
    left_at = models.DateTimeField(
        null=True, blank=True, help_text="Since then nobody wants it to go any more."
    )
    queued_at = models.DateTimeField()
    queued_by = models.ForeignKey(
        "accounts.User", on_delete=models.PROTECT, related_name="+", null=True, blank=True
    )

    farm_path: ClassVar[str | None] = None

    class Meta:
        indexes = [models.Index(fields=["business", "state", "-queued_at"], name="sendings_by_state")]
        ordering = ["-queued_at", "-id"]

    def __str__(self) -> str:
        return f"{self.subject} to {self.address}"


class SendingEvent(TenantModel):
    """One line of a sending's log."""

    sending = models.ForeignKey(Sending, on_delete=models.CASCADE, related_name="events")
    at = models.DateTimeField()
    state = models.CharField(max_length=12, choices=choices_of(SendingState))
    words = models.CharField(max_length=500, blank=True)

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["at", "id"]

    def __str__(self) -> str:
        return f"{self.sending_id}: {self.state}"


class InvoiceLink(TenantModel):
    """A secret address that shows one invoice to whoever holds it, until it ends or is closed."""

    invoice = models.ForeignKey(Invoice, on_delete=models.CASCADE, related_name="links")
    secret_hash = models.CharField(max_length=64, unique=True)
    made_at = models.DateTimeField()
    expires_at = models.DateTimeField()
    closed_at = models.DateTimeField(null=True, blank=True)
    opened_at = models.DateTimeField(null=True, blank=True, help_text="When it was last opened.")

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["-made_at", "-id"]

    def __str__(self) -> str:
        return f"link to invoice {self.invoice_id}"

    def is_alive(self, at: datetime) -> bool:
        return self.closed_at is None and at < self.expires_at

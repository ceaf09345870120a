"""Papers on their way, and the link that opens one."""

from datetime import datetime
from typing import ClassVar

from django.db import models

from farms.models import Farm
from invoicing.domain.sent_papers import SentPaper
from invoicing.models.invoice import Invoice
from invoicing.models.reminder import Reminder
from trimops.kernel.choices import choices_of
from trimops.outbox.models import Outgoing
from trimops.tenancy.models import TenantModel


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


class Sending(TenantModel):
    """Which paper of which farm an outgoing mail brings. Whether it went is told by the mail itself."""

    paper = models.CharField(max_length=9, choices=choices_of(SentPaper))
    farm = models.ForeignKey(Farm, on_delete=models.PROTECT, related_name="sendings")
    invoice = models.ForeignKey(
        Invoice, on_delete=models.CASCADE, related_name="sendings", null=True, blank=True
    )
    reminder = models.ForeignKey(
        Reminder, on_delete=models.CASCADE, related_name="sendings", null=True, blank=True
    )
    with_xml = models.BooleanField(default=False)
    with_link = models.BooleanField(
        default=False, help_text="The mail ends with a secret address that opens the invoice."
    )
    link = models.ForeignKey(InvoiceLink, on_delete=models.SET_NULL, related_name="+", null=True, blank=True)
    outgoing = models.OneToOneField(Outgoing, on_delete=models.CASCADE, related_name="money")

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["-id"]

    def __str__(self) -> str:
        return f"{self.get_paper_display()}, mail {self.outgoing_id}"

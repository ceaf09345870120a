from datetime import time
from typing import ClassVar

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models

from farms.domain.told_by import FALLBACK, LANGUAGES
from farms.models import Contact
from trimops.kernel.choices import choices_of
from trimops.outbox.models import Outgoing
from trimops.tenancy.models import TenantModel
from visits.domain.messages.message_kinds import MessageKind
from visits.domain.messages.quiet_hours import QuietHours
from visits.models.visit import Visit


class MessageText(TenantModel):
    """What a business writes instead of the house text, in one language. A part left empty is the house's."""

    kind = models.CharField(max_length=10, choices=choices_of(MessageKind))
    language = models.CharField(max_length=8, choices=list(LANGUAGES.items()), default=FALLBACK)
    subject = models.CharField(max_length=200, blank=True)
    body = models.TextField("mail", max_length=4000, blank=True)
    short = models.CharField("SMS", max_length=600, blank=True)

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["business", "kind", "language"], name="one_text_per_kind_and_language"
            )
        ]
        ordering = ["kind", "language"]

    def __str__(self) -> str:
        return f"{self.get_kind_display()}, {self.get_language_display()}"


class MessageRules(TenantModel):
    """What a business has switched on, and when farms are left in peace."""

    switched_on = models.JSONField(default=list, blank=True, help_text="Kinds that go by themselves.")
    quiet_from = models.TimeField(default=time(20))
    quiet_until = models.TimeField(default=time(7))
    tomorrow_at = models.TimeField(default=time(16))
    late_minutes = models.PositiveSmallIntegerField(
        default=20, validators=[MinValueValidator(5), MaxValueValidator(180)]
    )

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [models.UniqueConstraint(fields=["business"], name="one_set_of_message_rules")]
        verbose_name_plural = "message rules"

    def __str__(self) -> str:
        return f"message rules of business {self.business_id}"

    def is_on(self, kind: MessageKind) -> bool:
        return kind.value in self.switched_on

    @property
    def quiet(self) -> QuietHours:
        """By the wall of the business, which must be at hand."""
        return QuietHours(self.quiet_from, self.quiet_until, self.business.zone)


class VisitMessage(TenantModel):
    """A person of a farm was told something of a visit: the hour it named, and the latest arrival it gave."""

    visit = models.ForeignKey(Visit, on_delete=models.CASCADE, related_name="messages")
    contact = models.ForeignKey(Contact, on_delete=models.SET_NULL, related_name="+", null=True, blank=True)
    kind = models.CharField(max_length=10, choices=choices_of(MessageKind))
    hour = models.DateTimeField(null=True, blank=True)
    latest = models.DateTimeField(null=True, blank=True)
    outgoing = models.ForeignKey(Outgoing, on_delete=models.SET_NULL, related_name="+", null=True, blank=True)
    made_at = models.DateTimeField()

    farm_path: ClassVar[str | None] = "visit__farm_id"

    class Meta:
        indexes = [models.Index(fields=["visit", "made_at"], name="message_by_visit")]
        ordering = ["made_at", "id"]

    def __str__(self) -> str:
        return f"visit {self.visit_id}: {self.kind}"

import uuid
from typing import ClassVar

from django.db import models

from trimops.kernel.choices import choices_of
from trimops.outbox.domain.outgoing_states import Channel, OutgoingState, Topic
from trimops.tenancy.models import TenantModel


class Outgoing(TenantModel):
    """One message to one address, kept from the transaction that caused it. It goes at least once.

    `key` is the Message-ID of a mail and the id of any other message, the same at each try, so that the receiver can
    drop repeats. `once` keeps the same news from being written twice.
    """

    key = models.UUIDField(default=uuid.uuid4, editable=False, unique=True)
    channel = models.CharField(max_length=7, choices=choices_of(Channel))
    topic = models.CharField(max_length=9, choices=choices_of(Topic))
    # Long enough for what names a mail address.
    once = models.CharField(max_length=320, blank=True)
    # Below the farms, so no foreign key: it lets a farm that is erased take its messages with it.
    farm_id = models.PositiveBigIntegerField(null=True, blank=True)
    address = models.CharField(max_length=400, help_text="Mail address, phone number or web address.")
    subject = models.CharField(max_length=200, blank=True)
    body = models.TextField(blank=True)
    # Stands in the body as {secret} and is put there when it goes; emptied once it went or was given up.
    secret = models.TextField(blank=True)
    reply_to = models.EmailField(blank=True)
    state = models.CharField(
        max_length=7, choices=choices_of(OutgoingState), default=OutgoingState.WAITING.value
    )
    written_at = models.DateTimeField()
    written_by = models.ForeignKey(
        "accounts.User", on_delete=models.PROTECT, related_name="+", null=True, blank=True
    )
    not_before = models.DateTimeField(null=True, blank=True, help_text="Quiet hours.")
    worthless_after = models.DateTimeField(null=True, blank=True)
    tries = models.PositiveSmallIntegerField(default=0)
    next_try_at = models.DateTimeField(null=True, blank=True)
    began_at = models.DateTimeField(null=True, blank=True)
    went_at = models.DateTimeField(null=True, blank=True)
    last_words = models.CharField(max_length=500, blank=True, help_text="What the other side said.")
    # A line broke, or the program was stopped, while it was handed over: they may have it, whatever the state says.
    may_have_gone = models.BooleanField(default=False)

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["business", "once"], condition=~models.Q(once=""), name="one_message_per_news"
            ),
        ]
        indexes = [models.Index(fields=["business", "state", "-written_at"], name="outgoing_by_state")]
        ordering = ["-written_at", "-id"]
        verbose_name_plural = "outgoing"

    def __str__(self) -> str:
        return f"{self.subject or self.topic} to {self.address}"


class OutgoingPart(TenantModel):
    """What hangs on a mail. `is_alternative`: another form of the text, as a calendar program reads it."""

    outgoing = models.ForeignKey(Outgoing, on_delete=models.CASCADE, related_name="parts")
    name = models.CharField(max_length=120, blank=True)
    media_type = models.CharField(max_length=120)
    content = models.BinaryField()
    is_alternative = models.BooleanField(default=False)

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        return f"{self.name or self.media_type} of {self.outgoing_id}"


class OutgoingEvent(TenantModel):
    """One line of a message's log."""

    outgoing = models.ForeignKey(Outgoing, on_delete=models.CASCADE, related_name="events")
    at = models.DateTimeField()
    state = models.CharField(max_length=7, choices=choices_of(OutgoingState))
    words = models.CharField(max_length=500, blank=True)

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["at", "id"]

    def __str__(self) -> str:
        return f"{self.outgoing_id}: {self.state}"

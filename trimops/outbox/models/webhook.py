from typing import ClassVar

from django.db import models

from trimops.tenancy.models import TenantModel


class WebhookAddress(TenantModel):
    """A web address of another program that is told of events, each signed with the address's own secret."""

    name = models.CharField(max_length=80)
    url = models.URLField(max_length=400)
    # Not a hash: each message is signed with it.
    secret = models.CharField(max_length=80)
    events = models.JSONField(default=list, help_text="Names of the events it is told of.")
    made_at = models.DateTimeField()
    made_by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")
    closed_at = models.DateTimeField(null=True, blank=True)

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["name", "id"]
        verbose_name_plural = "webhook addresses"

    def __str__(self) -> str:
        return self.name

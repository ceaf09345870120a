from typing import ClassVar

from django.db import models

from farms.models.farm import Farm
from trimops.tenancy.models import TenantModel


class Erasure(TenantModel):
    """A farm asked that what is known of it be erased; when that was done, and what had to stay."""

    farm = models.ForeignKey(Farm, on_delete=models.CASCADE, related_name="erasures")
    asked_at = models.DateTimeField()
    asked_by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")
    note = models.CharField(max_length=300, blank=True)
    withdrawn_at = models.DateTimeField(null=True, blank=True)
    done_at = models.DateTimeField(null=True, blank=True)
    done_by = models.ForeignKey(
        "accounts.User", on_delete=models.PROTECT, related_name="+", null=True, blank=True
    )
    outcome = models.JSONField(
        default=dict, blank=True, help_text="How many rows of what went, and what stayed."
    )

    farm_path: ClassVar[str | None] = "farm_id"

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["farm"],
                condition=models.Q(done_at__isnull=True, withdrawn_at__isnull=True),
                name="one_open_erasure_per_farm",
            )
        ]
        ordering = ["-asked_at", "-id"]

    def __str__(self) -> str:
        return f"erasure of farm {self.farm_id}"

    @property
    def is_open(self) -> bool:
        return self.done_at is None and self.withdrawn_at is None

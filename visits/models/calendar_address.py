from typing import ClassVar

from django.db import models

from farms.models import Farm
from trimops.tenancy.models import TenantModel
from visits.models.van import Van


class CalendarAddress(TenantModel):
    """A secret, revocable address of a calendar feed. Only the SHA-256 of the secret is kept.

    With a van it shows that van's visits, with a farm that farm's, with neither the whole business.
    """

    name = models.CharField(max_length=80)
    secret_hash = models.CharField(max_length=64, unique=True)
    van = models.ForeignKey(Van, on_delete=models.CASCADE, related_name="+", null=True, blank=True)
    farm = models.ForeignKey(Farm, on_delete=models.CASCADE, related_name="+", null=True, blank=True)
    made_at = models.DateTimeField()
    made_by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")
    revoked_at = models.DateTimeField(null=True, blank=True)

    farm_path: ClassVar[str | None] = "farm_id"

    class Meta:
        verbose_name_plural = "calendar addresses"
        ordering = ["name"]

    def __str__(self) -> str:
        return self.name

from typing import ClassVar

from django.db import models

from farms.models import Farm
from trimops.tenancy.models import TenantModel
from visits.models.van import Van


class CalendarAddress(TenantModel):
    """A secret, revocable address of a calendar feed. Only the SHA-256 of the secret is kept.

    With a van it shows that van's visits, with a trimmer those of the vans that he drives, with a farm that farm's,
    with none of them the whole business. `alarm_minutes` before a visit the calendar rings; empty: never.
    """

    name = models.CharField(max_length=80)
    secret_hash = models.CharField(max_length=64, unique=True)
    van = models.ForeignKey(Van, on_delete=models.CASCADE, related_name="+", null=True, blank=True)
    farm = models.ForeignKey(Farm, on_delete=models.CASCADE, related_name="+", null=True, blank=True)
    trimmer = models.ForeignKey(
        "accounts.User", on_delete=models.PROTECT, related_name="+", null=True, blank=True
    )
    alarm_minutes = models.PositiveSmallIntegerField(null=True, blank=True)
    shows_wishes = models.BooleanField(
        default=False, help_text="Also what is wanted and has no hour, on its last day."
    )
    made_at = models.DateTimeField()
    made_by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")
    revoked_at = models.DateTimeField(null=True, blank=True)

    farm_path: ClassVar[str | None] = "farm_id"

    class Meta:
        verbose_name_plural = "calendar addresses"
        ordering = ["name"]

    def __str__(self) -> str:
        return self.name

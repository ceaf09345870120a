from typing import ClassVar

from django.db import models

from trimops.tenancy.models import TenantModel
from visits.models.van import Van


class OutBecause(models.TextChoices):
    """Why a van does not go out."""

    CRUSH = "crush", "Crush broken"
    VAN = "van", "Van off the road"
    ILL = "ill", "Trimmer ill"


class VanOut(TenantModel):
    """A stretch of time in which a van does no work, though it would by its hours."""

    van = models.ForeignKey(Van, on_delete=models.CASCADE, related_name="outs")
    since = models.DateTimeField()
    until = models.DateTimeField()
    because = models.CharField(max_length=10, choices=OutBecause.choices)
    calendar_sequence = models.PositiveIntegerField(default=0, editable=False)
    noted_at = models.DateTimeField()
    noted_by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.CheckConstraint(condition=models.Q(until__gt=models.F("since")), name="van_out_ends_after")
        ]
        ordering = ["since", "id"]

    def __str__(self) -> str:
        return f"van {self.van_id}: {self.get_because_display()} from {self.since}"

from typing import ClassVar

from django.db import models

from trimops.tenancy.models import TenantModel
from visits.models.van import Van
from visits.models.visit import Visit


class PlanLock(TenantModel):
    """A visit that stays where it is when the week is planned: with its van on its day, or at its exact hour too."""

    visit = models.OneToOneField(Visit, on_delete=models.CASCADE, related_name="plan_lock")
    van = models.ForeignKey(Van, on_delete=models.CASCADE, related_name="+")
    day = models.DateField()
    start = models.DateTimeField(null=True, blank=True, help_text="None: any hour of the day.")
    at = models.DateTimeField()
    by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["day", "id"]

    def __str__(self) -> str:
        return f"visit {self.visit_id} stays on {self.day}"

    @property
    def shift(self) -> str:
        """The id of the shift in the week problem."""
        return f"van-{self.van_id}-{self.day}"

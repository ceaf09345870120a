from typing import ClassVar

from django.db import models

from farms.models.farm import Farm
from trimops.accounts.models import Membership
from trimops.tenancy.models import TenantModel


class FarmAccess(TenantModel):
    """Which farms a farm client may see. Staff need none: they see every farm of their business."""

    membership = models.ForeignKey(Membership, on_delete=models.CASCADE, related_name="+")
    farm = models.ForeignKey(Farm, on_delete=models.CASCADE, related_name="accesses")

    farm_path: ClassVar[str | None] = "farm_id"

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["membership", "farm"], name="one_access_per_farm_and_person")
        ]
        verbose_name_plural = "farm accesses"

    def __str__(self) -> str:
        return f"{self.membership_id} at {self.farm_id}"

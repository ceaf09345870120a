from typing import ClassVar

from django.db import models

from farms.models.farm import Farm
from trimops.accounts.models import Membership
from trimops.tenancy.models import TenantModel


class FarmAccess(TenantModel):
    """Which farms a farm client may see, and what they may do there. Staff need none: they see every farm.

    Every access shows the cows and the visits to come; the rights below are given one by one.
    """

    membership = models.ForeignKey(Membership, on_delete=models.CASCADE, related_name="+")
    farm = models.ForeignKey(Farm, on_delete=models.CASCADE, related_name="accesses")
    reads_reports = models.BooleanField("reads reports and figures", default=True)
    edits_draft = models.BooleanField("changes the draft list", default=True)
    asks_visits = models.BooleanField("asks for visits and takes hours", default=True)
    sees_money = models.BooleanField("sees invoices", default=False)
    hands_over = models.BooleanField("takes the farm's data out and lets the vet in", default=False)

    farm_path: ClassVar[str | None] = "farm_id"

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["membership", "farm"], name="one_access_per_farm_and_person")
        ]
        verbose_name_plural = "farm accesses"

    def __str__(self) -> str:
        return f"{self.membership_id} at {self.farm_id}"

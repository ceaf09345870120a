from typing import ClassVar

from django.db import models

from trimops.tenancy.models import TenantModel
from visits.models.visit import Visit


class Invitation(TenantModel):
    """An address that was invited to a visit's hour (RFC 5546), and the hour and sequence that it was last told.

    Kept so that a change goes to the same people, and a visit called off is called off with all of them.
    """

    visit = models.ForeignKey(Visit, on_delete=models.CASCADE, related_name="invitations")
    address = models.EmailField()
    name = models.CharField(max_length=120, blank=True)
    start = models.DateTimeField()
    finish = models.DateTimeField()
    is_confirmed = models.BooleanField()
    sequence = models.PositiveIntegerField()
    sent_at = models.DateTimeField()
    cancelled_at = models.DateTimeField(null=True, blank=True)

    farm_path: ClassVar[str | None] = "visit__farm_id"

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["visit", "address"], name="one_invitation_per_address")
        ]
        ordering = ["visit_id", "address"]

    def __str__(self) -> str:
        return f"visit {self.visit_id}, sequence {self.sequence}"

from typing import ClassVar

from django.db import models

from trimops.tenancy.models import TenantModel


class AuditCut(TenantModel):
    """The oldest part of a business's trail was taken away, and this stands in its place: the chain goes on from here.

    The first kept entry is the one at `position` + 1. That it was cut is an entry of the trail itself, which proves
    what stands here. It is written once; the database refuses to change it, and lets entries go only where a cut
    covers them (`audit_locks.py`).
    """

    position = models.PositiveBigIntegerField(help_text="Of the last entry that went.")
    chain = models.CharField(max_length=64, help_text="The hash over all up to it.")
    entries = models.PositiveBigIntegerField(help_text="How many went with this cut.")
    before = models.DateTimeField(help_text="All of them were written before this.")
    years = models.PositiveSmallIntegerField(help_text="How long the business kept its trail at that time.")
    cut_at = models.DateTimeField()

    farm_path: ClassVar[str | None] = None

    class Meta:
        verbose_name = "cut of the audit trail"
        verbose_name_plural = "cuts of the audit trail"
        constraints = [
            models.UniqueConstraint(fields=["business", "position"], name="one_audit_cut_at_each_position")
        ]
        ordering = ["business", "position"]

    def __str__(self) -> str:
        return f"cut up to {self.position}"

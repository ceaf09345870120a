from typing import ClassVar

from django.db import models

from trimops.audit.models.audit_entry import AuditEntry
from trimops.tenancy.models import TenantModel


class AuditSeal(TenantModel):
    """One link of a business's chain: which entry stands at that place, and the hash over all up to it.

    Apart from the entries, so that who writes waits for nobody; sealed a few minutes later, one process at a time.
    """

    position = models.PositiveBigIntegerField(help_text="1, 2, 3 ... in each business.")
    entry = models.OneToOneField(AuditEntry, on_delete=models.PROTECT, related_name="seal")
    chain = models.CharField(max_length=64)
    sealed_at = models.DateTimeField()

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["business", "position"], name="one_seal_at_each_position")
        ]
        ordering = ["business", "position"]

    def __str__(self) -> str:
        return f"{self.position} {self.chain[:12]}"

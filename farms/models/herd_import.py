from typing import ClassVar

from django.db import models

from farms.models.farm import Farm
from trimops.tenancy.models import TenantModel


class HerdImport(TenantModel):
    """A herd list as it was handed in, kept until applied. Nothing changes before `applied_at`."""

    farm = models.ForeignKey(Farm, on_delete=models.CASCADE, related_name="herd_imports")
    file_name = models.CharField(max_length=200)
    content = models.BinaryField()
    uploaded_at = models.DateTimeField()
    uploaded_by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")
    applied_at = models.DateTimeField(null=True, blank=True)
    outcome = models.JSONField(
        default=dict, blank=True, help_text="Counts of new, changed, unchanged, refused."
    )

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["-uploaded_at"]

    def __str__(self) -> str:
        return self.file_name

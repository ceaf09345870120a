from datetime import datetime
from typing import ClassVar

from django.db import models

from farms.models.farm import Farm
from trimops.tenancy.models import TenantModel


class VetPass(TenantModel):
    """What the farm lets its vet see, by a secret link with an end. Only the SHA-256 of the secret is kept."""

    farm = models.ForeignKey(Farm, on_delete=models.CASCADE, related_name="vet_passes")
    vet_name = models.CharField("the vet", max_length=120)
    email = models.EmailField(blank=True)
    secret_hash = models.CharField(max_length=64, unique=True)
    shows_letters = models.BooleanField("cows for the vet", default=True)
    shows_reports = models.BooleanField("visit reports", default=True)
    shows_cows = models.BooleanField("each cow's feet", default=False)
    shows_photos = models.BooleanField("photos of feet", default=False)
    shows_figures = models.BooleanField("herd figures", default=False)
    made_at = models.DateTimeField()
    made_by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")
    expires_at = models.DateTimeField()
    closed_at = models.DateTimeField(null=True, blank=True)
    opened_at = models.DateTimeField(null=True, blank=True, help_text="When it was last opened.")

    farm_path: ClassVar[str | None] = "farm_id"

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=models.Q(expires_at__gt=models.F("made_at")), name="vet_pass_ends_after_it_begins"
            )
        ]
        ordering = ["-made_at", "-id"]
        verbose_name_plural = "vet passes"

    def __str__(self) -> str:
        return f"{self.vet_name} at farm {self.farm_id}"

    def is_open(self, at: datetime) -> bool:
        return self.closed_at is None and at < self.expires_at

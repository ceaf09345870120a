from typing import ClassVar

from django.db import models

from farms.models.farm import Farm
from trimops.tenancy.models import TenantModel


class Contact(TenantModel):
    """A person at a farm, or its vet: whom to ring and who gets the papers."""

    farm = models.ForeignKey(Farm, on_delete=models.CASCADE, related_name="contacts")
    name = models.CharField(max_length=120)
    part = models.CharField("part", max_length=60, help_text="Herd manager, owner, vet, office …")
    phone = models.CharField(max_length=40, blank=True)
    email = models.EmailField(blank=True)
    gets_reports = models.BooleanField(default=False)

    farm_path: ClassVar[str | None] = "farm_id"

    class Meta:
        ordering = ["name"]

    def __str__(self) -> str:
        return f"{self.name} ({self.part})"

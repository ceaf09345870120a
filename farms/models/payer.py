from typing import ClassVar

from django.db import models

from trimops.accounts.models.business import COUNTRY_CODE
from trimops.tenancy.models import TenantModel


class Payer(TenantModel):
    """Who is billed for a farm when that is not the farm itself: a partnership, an estate, an owner."""

    name = models.CharField(max_length=120)
    address = models.TextField(blank=True)
    country = models.CharField(
        max_length=2,
        blank=True,
        validators=[COUNTRY_CODE],
        help_text="Two letters; empty: the same as the business.",
    )
    email = models.EmailField(blank=True)
    vat_number = models.CharField(max_length=32, blank=True)
    payment_days = models.PositiveSmallIntegerField(null=True, blank=True)

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [models.UniqueConstraint(fields=["business", "name"], name="one_payer_per_name")]

    def __str__(self) -> str:
        return self.name

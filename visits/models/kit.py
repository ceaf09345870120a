from typing import ClassVar

from django.db import models

from trimops.tenancy.models import TenantModel
from visits.models.trim import Trim
from visits.models.van import Van
from visits.models.visit import Visit


class ConsumableKind(models.TextChoices):
    BLOCK = "block", "Blocks"
    GLUE = "glue", "Glue"
    WRAP = "wrap", "Wraps"
    DRESSING = "dressing", "Dressings"
    GLOVES = "gloves", "Gloves"
    DISC = "disc", "Discs"
    DISINFECTANT = "disinfectant", "Disinfectant"


class Consumable(TenantModel):
    """Something that is used up at the crush, and the unit it is counted in."""

    name = models.CharField(max_length=80)
    kind = models.CharField(max_length=12, choices=ConsumableKind.choices)
    unit = models.CharField(max_length=12, help_text="each, ml, g, pair …")
    block_kind = models.CharField(max_length=8, blank=True, help_text="Which block of a trim uses this up.")
    used_per_block = models.DecimalField(
        max_digits=8, decimal_places=2, default=0, help_text="Used with every block put on, in the unit."
    )

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [models.UniqueConstraint(fields=["business", "name"], name="one_consumable_per_name")]
        ordering = ["kind", "name"]

    def __str__(self) -> str:
        return self.name


class MovementKind(models.TextChoices):
    BOUGHT = "bought", "Bought"
    USED = "used", "Used"
    COUNTED = "counted", "Counted"
    WRITTEN_OFF = "written_off", "Written off"


class StockMovement(TenantModel):
    """One line of the stock ledger; never changed, only followed by another. Quantity is signed, in the unit."""

    consumable = models.ForeignKey(Consumable, on_delete=models.PROTECT, related_name="movements")
    van = models.ForeignKey(Van, on_delete=models.PROTECT, related_name="movements", null=True, blank=True)
    kind = models.CharField(max_length=12, choices=MovementKind.choices)
    quantity = models.DecimalField(max_digits=10, decimal_places=2)
    cost = models.DecimalField(max_digits=10, decimal_places=2, null=True, blank=True)
    at = models.DateTimeField(db_index=True)
    trim = models.ForeignKey(
        Trim, on_delete=models.PROTECT, related_name="consumables_used", null=True, blank=True
    )
    visit = models.ForeignKey(
        Visit, on_delete=models.PROTECT, related_name="kit_corrections", null=True, blank=True
    )

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["at", "id"]

    def __str__(self) -> str:
        return f"{self.kind} {self.quantity} of {self.consumable_id}"


class Knife(TenantModel):
    """One hoof knife of a van."""

    van = models.ForeignKey(Van, on_delete=models.CASCADE, related_name="knives")
    name = models.CharField(max_length=40)
    bought_on = models.DateField()
    retired_on = models.DateField(null=True, blank=True)

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [models.UniqueConstraint(fields=["van", "name"], name="one_knife_per_name_and_van")]
        verbose_name_plural = "knives"
        ordering = ["name"]

    def __str__(self) -> str:
        return self.name


class Sharpening(TenantModel):
    """When a knife was sharpened and how many cows the edge before had done (the trimmer's own count)."""

    knife = models.ForeignKey(Knife, on_delete=models.CASCADE, related_name="sharpenings")
    at = models.DateTimeField()
    cows_since_last = models.PositiveSmallIntegerField(null=True, blank=True)

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["at"]

    def __str__(self) -> str:
        return f"knife {self.knife_id} at {self.at}"

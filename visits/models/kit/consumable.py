from typing import ClassVar

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models

from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel
from visits.domain.actions import BlockKind
from visits.domain.kit.stock_kinds import ConsumableKind, Unit, UsePer


class Consumable(TenantModel):
    """Something that is used up at the crush: what it is, the unit it is counted in, how it is bought."""

    name = models.CharField(max_length=80)
    kind = models.CharField(max_length=12, choices=choices_of(ConsumableKind))
    size = models.CharField(max_length=40, blank=True, help_text="130 mm, large, 100 mm wide …")
    unit = models.CharField(max_length=12, choices=choices_of(Unit))
    is_active = models.BooleanField("in use", default=True)

    supplier = models.CharField(max_length=120, blank=True)
    supplier_email = models.EmailField(blank=True)
    pack = models.DecimalField(
        max_digits=8,
        decimal_places=2,
        default=1,
        validators=[MinValueValidator(0.01)],
        help_text="Bought in whole packs of so many.",
    )
    price = models.DecimalField(
        max_digits=10, decimal_places=2, null=True, blank=True, help_text="Of one pack, for the order list."
    )
    lead_days = models.PositiveSmallIntegerField(
        default=5, validators=[MaxValueValidator(365)], help_text="Days from order to arrival."
    )
    service_percent = models.DecimalField(
        max_digits=4,
        decimal_places=1,
        null=True,
        blank=True,
        validators=[MinValueValidator(50), MaxValueValidator(99.9)],
        help_text="Chance of not running out; empty: the business's own figure.",
    )
    shelf_days = models.PositiveSmallIntegerField(
        null=True, blank=True, help_text="Days it keeps from the day it is bought, where no date is on it."
    )
    lowest_celsius = models.DecimalField(
        max_digits=4,
        decimal_places=1,
        null=True,
        blank=True,
        help_text="Lowest working temperature, as on the label.",
    )
    grams_per_ml = models.DecimalField(
        max_digits=5,
        decimal_places=3,
        null=True,
        blank=True,
        validators=[MinValueValidator(0.1), MaxValueValidator(20)],
        help_text="So that use by weight can be told in ml, or the other way round.",
    )
    active_substance = models.CharField(max_length=80, blank=True, help_text="As on the label.")
    dilution = models.CharField(max_length=40, blank=True, help_text="As on the label: 1:100, 2 % w/v …")
    contact_minutes = models.DecimalField(
        max_digits=5,
        decimal_places=1,
        null=True,
        blank=True,
        validators=[MinValueValidator(0)],
        help_text="As on the label.",
    )
    note = models.CharField(max_length=300, blank=True)

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [models.UniqueConstraint(fields=["business", "name"], name="one_consumable_per_name")]
        ordering = ["kind", "name"]

    def __str__(self) -> str:
        return self.name


class UseRule(TenantModel):
    """One line of a recipe: so much of a consumable is used with every block (of a kind), cow, visit …"""

    consumable = models.ForeignKey(Consumable, on_delete=models.CASCADE, related_name="use_rules")
    per = models.CharField(max_length=10, choices=choices_of(UsePer))
    block_kind = models.CharField(
        max_length=8, choices=choices_of(BlockKind), blank=True, help_text="Empty: blocks of every kind."
    )
    quantity = models.DecimalField(
        max_digits=8,
        decimal_places=2,
        validators=[MinValueValidator(0.01)],
        help_text="In the consumable's unit.",
    )

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["consumable", "per", "block_kind"], name="one_use_rule_per_occasion"
            ),
            models.CheckConstraint(condition=models.Q(quantity__gt=0), name="use_rule_uses_something"),
            models.CheckConstraint(
                condition=models.Q(block_kind="") | models.Q(per="block"), name="block_kind_is_of_blocks"
            ),
        ]
        ordering = ["per", "block_kind"]

    def __str__(self) -> str:
        return f"{self.quantity} of {self.consumable_id} per {self.per}"

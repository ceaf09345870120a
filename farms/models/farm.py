from typing import ClassVar

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models

from farms.domain.handling import CrushPlace, PowerSupply, Shelter
from farms.domain.hygiene import HygieneLevel
from farms.models.payer import Payer
from trimops.accounts.models.business import COUNTRY_CODE
from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet


class FarmQuerySet(TenantQuerySet["Farm"]):
    def active(self) -> "FarmQuerySet":
        return self.filter(is_active=True)

    def named_like(self, text: str) -> "FarmQuerySet":
        return self.filter(name__icontains=text) if text else self


class Farm(TenantModel):
    """A place with a herd: where it is, how to work there, how clean it is, how often it wants a visit."""

    name = models.CharField(max_length=120)
    address = models.TextField(blank=True)
    country = models.CharField(
        max_length=2,
        blank=True,
        validators=[COUNTRY_CODE],
        help_text="Two letters; empty: the same as the business.",
    )
    latitude = models.DecimalField(
        max_digits=8, decimal_places=6, validators=[MinValueValidator(-90), MaxValueValidator(90)]
    )
    longitude = models.DecimalField(
        max_digits=9, decimal_places=6, validators=[MinValueValidator(-180), MaxValueValidator(180)]
    )
    place_sequence = models.PositiveIntegerField(
        default=0,
        editable=False,
        help_text="How often its place changed: added to each visit's calendar sequence.",
    )
    shown_since = models.DateTimeField(
        null=True, blank=True, editable=False, help_text="Since when calendars show it as it is."
    )
    access_notes = models.TextField(blank=True, help_text="Gate, yard, turning room, dog, who to ring.")
    payer = models.ForeignKey(Payer, on_delete=models.PROTECT, related_name="farms", null=True, blank=True)
    email = models.EmailField(blank=True)
    phone = models.CharField(max_length=40, blank=True)
    vat_number = models.CharField(max_length=32, blank=True)
    herd_size = models.PositiveIntegerField(default=0, help_text="Cows in the herd, as the farm tells it.")
    routine_interval_days = models.PositiveSmallIntegerField(
        default=90, validators=[MinValueValidator(7)], help_text="Days between routine visits."
    )
    routine_cows = models.PositiveSmallIntegerField(
        default=25, validators=[MinValueValidator(1)], help_text="Cows usually presented at a routine visit."
    )
    rest_after_milking_minutes = models.PositiveSmallIntegerField(default=30)

    crush_place = models.CharField(
        max_length=10, choices=choices_of(CrushPlace), default=CrushPlace.BROUGHT.value
    )
    has_hard_standing = models.BooleanField("hard standing", default=True)
    has_water = models.BooleanField("water and hose", default=True)
    has_light = models.BooleanField("light", default=True)
    power = models.CharField(max_length=5, choices=choices_of(PowerSupply), default=PowerSupply.AMP_13.value)
    shelter = models.CharField(max_length=10, choices=choices_of(Shelter), default=Shelter.ROOF.value)

    hygiene_level = models.PositiveSmallIntegerField(
        choices=choices_of(HygieneLevel), default=HygieneLevel.USUAL.value
    )
    hygiene_reason = models.CharField(max_length=200, blank=True)
    hygiene_since = models.DateField(null=True, blank=True)
    wash_rule = models.CharField(
        "the farm's own wash rule",
        max_length=200,
        blank=True,
        help_text="As the farm asks for it at its gate.",
    )
    is_active = models.BooleanField(default=True)
    erased_at = models.DateTimeField(
        null=True, blank=True, help_text="Since then only its invoices are kept."
    )

    farm_path: ClassVar[str | None] = "id"
    objects: ClassVar = FarmQuerySet.as_manager()

    class Meta:
        constraints = [models.UniqueConstraint(fields=["business", "name"], name="one_farm_per_name")]
        ordering = ["name"]

    def __str__(self) -> str:
        return self.name

    @property
    def hygiene(self) -> HygieneLevel:
        return HygieneLevel(self.hygiene_level)


class HygieneChange(TenantModel):
    """A change of a farm's hygiene level: when, why, by whom."""

    farm = models.ForeignKey(Farm, on_delete=models.CASCADE, related_name="hygiene_changes")
    level = models.PositiveSmallIntegerField(choices=choices_of(HygieneLevel))
    reason = models.CharField(max_length=200)
    since = models.DateField()
    changed_at = models.DateTimeField()
    changed_by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")

    farm_path: ClassVar[str | None] = "farm_id"

    class Meta:
        ordering = ["-since", "-id"]

    def __str__(self) -> str:
        return f"{self.farm_id}: {self.level} since {self.since}"

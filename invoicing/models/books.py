"""For the books: what is closed, and the miles driven."""

from typing import ClassVar

from django.core.validators import MinValueValidator
from django.db import models

from invoicing.domain.travel_charge import DistanceUnit
from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel
from visits.models import Van, Visit


class PeriodLock(TenantModel):
    """Nothing dated up to that day may be issued, paid or changed. The newest row holds; each is kept."""

    locked_until = models.DateField(null=True, blank=True, help_text="Empty: nothing is locked.")
    at = models.DateTimeField()
    by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")
    why = models.CharField(max_length=200)

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["-at", "-id"]

    def __str__(self) -> str:
        return f"locked until {self.locked_until}"


class MileageRate(TenantModel):
    """The allowance from a day on: so much up to a yearly distance, then the other rate."""

    valid_from = models.DateField()
    unit = models.CharField(max_length=3, choices=choices_of(DistanceUnit))
    first_rate = models.DecimalField(max_digits=8, decimal_places=4, validators=[MinValueValidator(0)])
    up_to = models.PositiveIntegerField(null=True, blank=True, help_text="Empty: one rate for all.")
    then_rate = models.DecimalField(
        max_digits=8, decimal_places=4, default=0, validators=[MinValueValidator(0)]
    )
    year_begins_month = models.PositiveSmallIntegerField(default=1)
    year_begins_day = models.PositiveSmallIntegerField(default=1)
    source = models.CharField(max_length=200, help_text="Where the rates were read.")

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["business", "valid_from"], name="one_mileage_rate_per_day")
        ]
        ordering = ["-valid_from"]

    def __str__(self) -> str:
        return f"{self.first_rate} a {self.unit} from {self.valid_from}"


class Journey(TenantModel):
    """One drive for the business, as told by the day's visits or by hand. Distance in the unit given."""

    on = models.DateField(db_index=True)
    position = models.PositiveSmallIntegerField(default=1)
    van = models.ForeignKey(Van, on_delete=models.PROTECT, related_name="+", null=True, blank=True)
    visit = models.ForeignKey(Visit, on_delete=models.SET_NULL, related_name="+", null=True, blank=True)
    from_words = models.CharField(max_length=120)
    to_words = models.CharField(max_length=120)
    purpose = models.CharField(max_length=200)
    distance = models.DecimalField(max_digits=8, decimal_places=1, validators=[MinValueValidator(0)])
    unit = models.CharField(max_length=3, choices=choices_of(DistanceUnit))
    is_by_hand = models.BooleanField(default=False, help_text="Put in by a person, not made from a visit.")
    reckoned = models.DecimalField(
        max_digits=8,
        decimal_places=1,
        null=True,
        blank=True,
        help_text="What stood there before it was mended.",
    )
    reckoned_source = models.CharField(max_length=120, blank=True)
    mended_because = models.CharField(max_length=200, blank=True)
    source = models.CharField(max_length=120, help_text="Road map, reckoned, or the odometer.")
    noted_at = models.DateTimeField()
    noted_by = models.ForeignKey(
        "accounts.User", on_delete=models.PROTECT, related_name="+", null=True, blank=True
    )

    farm_path: ClassVar[str | None] = None

    class Meta:
        indexes = [models.Index(fields=["business", "on"], name="journeys_by_day")]
        ordering = ["on", "position", "id"]

    def __str__(self) -> str:
        return f"{self.on}: {self.from_words} to {self.to_words}"

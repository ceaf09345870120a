from typing import ClassVar

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models

from farms.models import WEEKDAYS
from trimops.tenancy.models import TenantModel


class Van(TenantModel):
    """A van with its crush, the trimmer who drives it, where it stands at night and what it costs."""

    name = models.CharField(max_length=60)
    trimmer = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")
    base_name = models.CharField(max_length=60, default="Yard")
    base_latitude = models.DecimalField(
        max_digits=8, decimal_places=6, validators=[MinValueValidator(-90), MaxValueValidator(90)]
    )
    base_longitude = models.DecimalField(
        max_digits=9, decimal_places=6, validators=[MinValueValidator(-180), MaxValueValidator(180)]
    )
    cost_per_day = models.DecimalField(max_digits=10, decimal_places=2, default=0)
    cost_per_work_hour = models.DecimalField(max_digits=10, decimal_places=2, default=25)
    cost_per_km = models.DecimalField(max_digits=10, decimal_places=2, default="0.45")
    is_active = models.BooleanField(default=True)
    shown_since = models.DateTimeField(
        null=True, blank=True, editable=False, help_text="Since when calendars show its name as it is."
    )

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [models.UniqueConstraint(fields=["business", "name"], name="one_van_per_name")]
        ordering = ["name"]

    def __str__(self) -> str:
        return self.name


class ShiftPattern(TenantModel):
    """The hours a van goes out on a weekday, its limits and when the meal may be."""

    van = models.ForeignKey(Van, on_delete=models.CASCADE, related_name="shift_patterns")
    weekday = models.PositiveSmallIntegerField(choices=WEEKDAYS)
    starts = models.TimeField()
    ends = models.TimeField()
    max_work_minutes = models.PositiveSmallIntegerField(default=600)
    max_cows = models.PositiveSmallIntegerField(default=70)
    meal_minutes = models.PositiveSmallIntegerField(default=30, validators=[MaxValueValidator(180)])
    meal_earliest = models.TimeField(default="11:30")
    meal_latest = models.TimeField(default="14:00")

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["van", "weekday"], name="one_shift_per_van_and_weekday"),
            models.CheckConstraint(
                condition=models.Q(ends__gt=models.F("starts")), name="shift_ends_after_it_starts"
            ),
        ]
        ordering = ["weekday"]

    def __str__(self) -> str:
        return f"{self.get_weekday_display()} {self.starts:%H:%M} to {self.ends:%H:%M}"


class DayOff(TenantModel):
    """A day on which a van does not go out."""

    van = models.ForeignKey(Van, on_delete=models.CASCADE, related_name="days_off")
    day = models.DateField()
    reason = models.CharField(max_length=120, blank=True)
    noted_at = models.DateTimeField(null=True, blank=True, editable=False)

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [models.UniqueConstraint(fields=["van", "day"], name="one_day_off_per_van_and_day")]
        ordering = ["day"]

    def __str__(self) -> str:
        return f"{self.day}: {self.reason}"

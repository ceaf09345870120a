from typing import ClassVar

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models

from farms.models.farm import Farm
from trimops.tenancy.models import TenantModel

WEEKDAYS = [
    (0, "Monday"),
    (1, "Tuesday"),
    (2, "Wednesday"),
    (3, "Thursday"),
    (4, "Friday"),
    (5, "Saturday"),
    (6, "Sunday"),
]


class Milking(TenantModel):
    """One milking of one weekday: from when, for how many minutes. The working windows follow from these."""

    farm = models.ForeignKey(Farm, on_delete=models.CASCADE, related_name="milkings")
    weekday = models.PositiveSmallIntegerField(choices=WEEKDAYS)
    starts = models.TimeField()
    minutes = models.PositiveSmallIntegerField(validators=[MinValueValidator(5), MaxValueValidator(720)])

    farm_path: ClassVar[str | None] = "farm_id"

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["farm", "weekday", "starts"], name="one_milking_at_a_time")
        ]
        ordering = ["weekday", "starts"]

    def __str__(self) -> str:
        return f"{self.get_weekday_display()} {self.starts:%H:%M}"

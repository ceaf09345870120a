from typing import ClassVar

from django.db import models

from trimops.tenancy.models import TenantModel


class RoadLeg(TenantModel):
    """What a road map said of the drive between two places, a car's time; both null where it knows no road.

    Places are known by where they are (`visits.domain.travel.place.Place.key`), so a farm or a base that moves is
    asked for anew by itself. `engine` names the map that said so.
    """

    engine = models.CharField(max_length=40)
    from_place = models.CharField(max_length=24)
    to_place = models.CharField(max_length=24)
    deciseconds = models.PositiveIntegerField(null=True)
    metres = models.PositiveIntegerField(null=True)
    asked_at = models.DateTimeField()

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["business", "engine", "from_place", "to_place"], name="one_road_leg_per_pair_and_map"
            ),
            models.CheckConstraint(
                condition=models.Q(deciseconds__isnull=True, metres__isnull=True)
                | models.Q(deciseconds__isnull=False, metres__isnull=False),
                name="road_leg_has_time_and_length_or_neither",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.from_place} to {self.to_place}"


class RoadTrouble(TenantModel):
    """When a road map last failed a business and why, so that it is not asked again at once."""

    engine = models.CharField(max_length=40)
    at = models.DateTimeField()
    why = models.CharField(max_length=200)

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["business", "engine"], name="one_road_trouble_per_map")
        ]

    def __str__(self) -> str:
        return f"{self.engine} failed at {self.at:%Y-%m-%d %H:%M}"

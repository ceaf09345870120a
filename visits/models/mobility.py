"""Mobility scores of a herd, as somebody walked behind it with a score sheet."""

from typing import ClassVar

from django.db import models

from farms.models import Cow, Farm
from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel
from visits.domain.mobility import MobilityScale


class MobilityScoring(TenantModel):
    """One round of scoring: which day, which score sheet, by whom. The scale is never turned into another."""

    farm = models.ForeignKey(Farm, on_delete=models.CASCADE, related_name="scorings")
    scored_on = models.DateField()
    scale = models.CharField(max_length=8, choices=choices_of(MobilityScale))
    scored_by = models.CharField(max_length=120, blank=True)
    whole_herd = models.BooleanField(
        "the whole herd", default=False, help_text="Every cow in milk was looked at, lame or not."
    )
    noted_at = models.DateTimeField()
    noted_by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")

    farm_path: ClassVar[str | None] = "farm_id"

    class Meta:
        ordering = ["-scored_on", "-id"]

    def __str__(self) -> str:
        return f"scores of {self.scored_on}, farm {self.farm_id}"


class MobilityScore(TenantModel):
    """One cow's score of a round."""

    scoring = models.ForeignKey(MobilityScoring, on_delete=models.CASCADE, related_name="scores")
    cow = models.ForeignKey(Cow, on_delete=models.CASCADE, related_name="mobility_scores")
    score = models.PositiveSmallIntegerField()

    farm_path: ClassVar[str | None] = "scoring__farm_id"

    class Meta:
        constraints = [models.UniqueConstraint(fields=["scoring", "cow"], name="one_score_per_cow_and_round")]

    def __str__(self) -> str:
        return f"cow {self.cow_id}: {self.score}"

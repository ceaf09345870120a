import uuid
from typing import ClassVar, Self, cast

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models

from farms.models import Cow
from trimops.kernel.choices import choices_of
from trimops.kernel.scope import Scope
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet
from visits.domain.actions import ActionKind, BlockKind, TrimKind
from visits.domain.feet import Claw, Foot, ZoneMap
from visits.domain.lesions import DDStage, LesionCode
from visits.models.visit import Visit


class TrimQuerySet(TenantQuerySet["Trim"]):
    def within(self, scope: Scope) -> Self:
        """The cows that stand; one that was taken back is seen only by `with_taken_back`."""
        return self.with_taken_back(scope).filter(taken_back_at__isnull=True)

    def with_taken_back(self, scope: Scope) -> Self:
        return super().within(scope)

    def of_cow(self, cow: Cow) -> "TrimQuerySet":
        return self.filter(cow_id=cow.pk)

    def newest_first(self) -> "TrimQuerySet":
        return self.order_by("-recorded_at", "-id")


class Trim(TenantModel):
    """One cow at the crush on one visit: what was seen and done. `client_id` is made where it was put down."""

    client_id = models.UUIDField(default=uuid.uuid4)
    version = models.PositiveIntegerField(default=1)
    visit = models.ForeignKey(Visit, on_delete=models.PROTECT, related_name="trims")
    cow = models.ForeignKey(Cow, on_delete=models.PROTECT, related_name="trims")
    kind = models.CharField(max_length=12, choices=choices_of(TrimKind))
    mobility_scale = models.CharField(max_length=8, blank=True)
    mobility_score = models.PositiveSmallIntegerField(null=True, blank=True)
    belly_band_minutes = models.PositiveSmallIntegerField(null=True, blank=True)
    crush_seconds = models.PositiveIntegerField(null=True, blank=True, help_text="How long she stood in it.")
    for_vet = models.CharField(max_length=200, blank=True, help_text="The vet's, in the trimmer's words.")
    told_vet = models.CharField(max_length=120, blank=True, help_text="Whom the trimmer told of it.")
    note = models.CharField(max_length=300, blank=True)
    taken_back_at = models.DateTimeField(null=True, blank=True, help_text="Set: nobody sees it but history.")
    recorded_at = models.DateTimeField(db_index=True)
    recorded_by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")

    farm_path: ClassVar[str | None] = "visit__farm_id"
    objects: ClassVar = TrimQuerySet.as_manager()

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["visit", "client_id"], name="trim_arrives_once"),
            models.UniqueConstraint(fields=["visit", "cow"], name="one_trim_per_cow_and_visit"),
        ]
        ordering = ["recorded_at", "id"]

    def __str__(self) -> str:
        return f"cow {self.cow_id} on visit {self.visit_id}"

    def locked(self) -> Self:
        """As for every row; one that was taken back can be locked too."""
        rows: TrimQuerySet = type(self).objects.with_taken_back(self.scope)
        return cast(Self, rows.locked().get(pk=self.pk))


class TrimmedFoot(TenantModel):
    """One lifted foot: its measures and the signs looked for."""

    trim = models.ForeignKey(Trim, on_delete=models.CASCADE, related_name="feet")
    foot = models.CharField(max_length=2, choices=choices_of(Foot))
    wall_mm = models.PositiveSmallIntegerField(null=True, blank=True)
    wall_measured_from = models.CharField(max_length=40, blank=True)
    toe_angle = models.PositiveSmallIntegerField(null=True, blank=True)
    look_again_days = models.PositiveSmallIntegerField(
        null=True, blank=True, help_text="Set by hand: look again after so many days; 0: no need."
    )
    for_vet = models.CharField(max_length=200, blank=True, help_text="The vet's, in the trimmer's words.")
    has_pain = models.BooleanField("pain to the hoof testers", default=False)
    has_swelling = models.BooleanField("swelling", default=False)
    swelling_above_dewclaw = models.BooleanField("swelling above the dew claws", default=False)
    has_bad_smell = models.BooleanField("bad smell", default=False)
    drew_blood = models.BooleanField("blood drawn", default=False)
    sensitive_tissue = models.BooleanField("sensitive tissue open", default=False)
    deep_infection = models.BooleanField("looks deep", default=False)
    no_better_at_recheck = models.BooleanField("no better at re-check", default=False)

    farm_path: ClassVar[str | None] = "trim__visit__farm_id"

    class Meta:
        constraints = [models.UniqueConstraint(fields=["trim", "foot"], name="each_foot_once_per_trim")]

    def __str__(self) -> str:
        return f"{self.foot} of trim {self.trim_id}"


class Finding(TenantModel):
    """A lesion seen (not diagnosed): which claw, which numbered place of which map, how bad."""

    trimmed_foot = models.ForeignKey(TrimmedFoot, on_delete=models.CASCADE, related_name="findings")
    lesion = models.CharField(max_length=4, choices=choices_of(LesionCode))
    claw = models.CharField(max_length=8, choices=choices_of(Claw))
    zone = models.PositiveSmallIntegerField(null=True, blank=True)
    zone_map = models.CharField(max_length=8, choices=choices_of(ZoneMap), default=ZoneMap.ILC.value)
    severity = models.PositiveSmallIntegerField(
        default=1, validators=[MinValueValidator(1), MaxValueValidator(3)]
    )
    dd_stage = models.CharField(max_length=4, choices=choices_of(DDStage), blank=True)

    farm_path: ClassVar[str | None] = "trimmed_foot__trim__visit__farm_id"

    class Meta:
        indexes = [models.Index(fields=["business", "lesion"], name="finding_by_lesion")]

    def __str__(self) -> str:
        return self.lesion


class ClawAction(TenantModel):
    """One thing done to a claw or a foot."""

    trimmed_foot = models.ForeignKey(TrimmedFoot, on_delete=models.CASCADE, related_name="actions")
    kind = models.CharField(max_length=12, choices=choices_of(ActionKind))
    claw = models.CharField(max_length=8, choices=choices_of(Claw), blank=True)
    block_kind = models.CharField(max_length=8, choices=choices_of(BlockKind), blank=True)

    farm_path: ClassVar[str | None] = "trimmed_foot__trim__visit__farm_id"

    def __str__(self) -> str:
        return self.kind


class Referral(TenantModel):
    """Something that is the vet's, with what was seen and whom the trimmer told."""

    trim = models.ForeignKey(Trim, on_delete=models.CASCADE, related_name="referrals")
    foot = models.CharField(max_length=2, choices=choices_of(Foot), blank=True)
    reason = models.CharField(max_length=200)
    told_whom = models.CharField(max_length=120, blank=True)
    told_at = models.DateTimeField(null=True, blank=True)

    farm_path: ClassVar[str | None] = "trim__visit__farm_id"

    def __str__(self) -> str:
        return self.reason

from datetime import date
from typing import ClassVar

from django.db import models

from farms.models import Cow, Farm
from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet
from visits.domain.actions import BlockKind
from visits.domain.feet import Claw, Foot
from visits.domain.recheck_due import RecheckCause
from visits.models.trim import Trim
from visits.models.visit import Visit


class RecheckQuerySet(TenantQuerySet["Recheck"]):
    def open(self) -> "RecheckQuerySet":
        return self.filter(closed_on__isnull=True)

    def overdue_on(self, day: date) -> "RecheckQuerySet":
        return self.open().filter(due_until__lt=day)


class Recheck(TenantModel):
    """A foot that must be looked at again. At most one is open per cow and foot."""

    farm = models.ForeignKey(Farm, on_delete=models.CASCADE, related_name="rechecks")
    cow = models.ForeignKey(Cow, on_delete=models.CASCADE, related_name="rechecks")
    foot = models.CharField(max_length=2, choices=choices_of(Foot))
    cause = models.CharField(max_length=10, choices=choices_of(RecheckCause))
    what = models.CharField(max_length=120, help_text="In words: wooden block on outer claw, sole ulcer …")
    due_from = models.DateField()
    due_until = models.DateField()
    from_trim = models.ForeignKey(Trim, on_delete=models.CASCADE, related_name="rechecks_booked")
    visit = models.ForeignKey(
        Visit, on_delete=models.SET_NULL, related_name="rechecks", null=True, blank=True
    )
    closed_on = models.DateField(null=True, blank=True)
    closed_by_trim = models.ForeignKey(
        Trim, on_delete=models.SET_NULL, related_name="rechecks_closed", null=True, blank=True
    )
    closed_because = models.CharField(max_length=120, blank=True)

    farm_path: ClassVar[str | None] = "farm_id"
    objects: ClassVar = RecheckQuerySet.as_manager()

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["cow", "foot"],
                condition=models.Q(closed_on__isnull=True),
                name="one_open_recheck_per_cow_and_foot",
            ),
            models.CheckConstraint(
                condition=models.Q(due_until__gte=models.F("due_from")), name="recheck_due_range_in_order"
            ),
        ]
        ordering = ["due_until", "id"]

    def __str__(self) -> str:
        return f"cow {self.cow_id} {self.foot}: {self.what}"


class Block(TenantModel):
    """A block on a claw until someone takes it off."""

    cow = models.ForeignKey(Cow, on_delete=models.CASCADE, related_name="blocks")
    foot = models.CharField(max_length=2, choices=choices_of(Foot))
    claw = models.CharField(max_length=8, choices=choices_of(Claw))
    kind = models.CharField(max_length=8, choices=choices_of(BlockKind))
    put_on_by = models.ForeignKey(Trim, on_delete=models.CASCADE, related_name="blocks_put_on")
    put_on = models.DateField()
    off_due = models.DateField()
    off_on = models.DateField(null=True, blank=True)
    off_by = models.ForeignKey(
        Trim, on_delete=models.SET_NULL, related_name="blocks_taken_off", null=True, blank=True
    )

    farm_path: ClassVar[str | None] = "cow__farm_id"

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["cow", "foot", "claw"],
                condition=models.Q(off_on__isnull=True),
                name="one_block_on_a_claw",
            )
        ]
        ordering = ["off_due", "id"]

    def __str__(self) -> str:
        return f"{self.kind} on {self.foot} {self.claw} of cow {self.cow_id}"

"""What the farm makes of the draft list: by which rules, and which cows it strikes or adds."""

from typing import ClassVar

from django.db import models

from farms.models import Cow, Farm
from trimops.tenancy.models import TenantModel
from visits.models.visit import Visit


class DraftChoice(TenantModel):
    """The rule set a farm goes by, and its own days where they differ; a farm without one goes by the usual set."""

    farm = models.ForeignKey(Farm, on_delete=models.CASCADE, related_name="draft_choices")
    rule_set = models.CharField(max_length=30)
    own = models.JSONField(default=dict, blank=True, help_text="Only what differs from the rule set.")
    changed_at = models.DateTimeField()
    changed_by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")

    farm_path: ClassVar[str | None] = "farm_id"

    class Meta:
        constraints = [models.UniqueConstraint(fields=["farm"], name="one_draft_choice_per_farm")]

    def __str__(self) -> str:
        return f"{self.rule_set} for farm {self.farm_id}"


class DraftKind(models.TextChoices):
    STRUCK = "struck", "Struck"
    ADDED = "added", "Added"


class DraftChange(TenantModel):
    """A cow struck from a visit's draft list or added to it, why, and by whom. Taking it back deletes the row."""

    visit = models.ForeignKey(Visit, on_delete=models.CASCADE, related_name="draft_changes")
    cow = models.ForeignKey(Cow, on_delete=models.CASCADE, related_name="draft_changes")
    kind = models.CharField(max_length=6, choices=DraftKind.choices)
    why = models.CharField(max_length=200, blank=True)
    at = models.DateTimeField()
    by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")

    farm_path: ClassVar[str | None] = "visit__farm_id"

    class Meta:
        constraints = [models.UniqueConstraint(fields=["visit", "cow"], name="one_draft_change_per_cow")]
        ordering = ["at", "id"]

    def __str__(self) -> str:
        return f"cow {self.cow_id} {self.kind} for visit {self.visit_id}"

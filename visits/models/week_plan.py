from typing import ClassVar

from django.db import models

from trimops.tenancy.models import TenantModel


class WeekPlanState(models.TextChoices):
    THINKING = "thinking", "Thinking"
    PROPOSED = "proposed", "Proposed"
    ACCEPTED = "accepted", "Accepted"
    SET_ASIDE = "set_aside", "Set aside"
    FAILED = "failed", "Failed"


class WeekPlan(TenantModel):
    """One planning of one week: the problem as asked, the plan as found, and how far the thinking has come."""

    monday = models.DateField()
    state = models.CharField(
        max_length=10, choices=WeekPlanState.choices, default=WeekPlanState.THINKING.value
    )
    problem = models.JSONField()
    plan = models.JSONField(null=True, blank=True)
    percent = models.PositiveSmallIntegerField(default=0)
    progress_text = models.CharField(max_length=200, blank=True)
    failure = models.TextField(blank=True)
    asked_at = models.DateTimeField()
    asked_by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")
    finished_at = models.DateTimeField(null=True, blank=True)
    accepted_at = models.DateTimeField(null=True, blank=True)

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["-asked_at"]

    def __str__(self) -> str:
        return f"week of {self.monday}, {self.state}"

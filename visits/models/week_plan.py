from typing import ClassVar

from django.db import models

from trimops.tenancy.models import TenantModel


class WeekPlanState(models.TextChoices):
    THINKING = "thinking", "Thinking"
    PROPOSED = "proposed", "Proposed"
    ACCEPTED = "accepted", "Accepted"
    SET_ASIDE = "set_aside", "Set aside"
    FAILED = "failed", "Failed"


class PlanMaker(models.TextChoices):
    """How a plan came about."""

    PLANNER = "planner", "Planned"
    HAND = "hand", "Moved by hand"


class WeekPlan(TenantModel):
    """One planning of one week: the problem as asked, the plan as found, and how far the thinking has come."""

    monday = models.DateField()
    state = models.CharField(
        max_length=10, choices=WeekPlanState.choices, default=WeekPlanState.THINKING.value
    )
    problem = models.JSONField()
    travel = models.JSONField(
        default=dict, blank=True, help_text="Where the drives of the problem come from."
    )
    plan = models.JSONField(null=True, blank=True)
    percent = models.PositiveSmallIntegerField(default=0)
    progress_text = models.CharField(max_length=200, blank=True)
    failure = models.TextField(blank=True)
    made_by = models.CharField(max_length=10, choices=PlanMaker.choices, default=PlanMaker.PLANNER.value)
    what_changed = models.CharField(max_length=200, blank=True, help_text="Against the plan it follows.")
    follows = models.ForeignKey("self", on_delete=models.PROTECT, null=True, blank=True, related_name="+")
    left_by_hand = models.JSONField(
        default=dict,
        blank=True,
        help_text="Job -> what leaving it out was reckoned at; in `problem` it costs nothing.",
    )
    cost_history = models.JSONField(default=list, blank=True, help_text="(seconds, cost) as the search went.")
    stop_asked_at = models.DateTimeField(null=True, blank=True)
    because = models.CharField(max_length=300, blank=True, help_text="What happened, if planned anew.")
    change = models.JSONField(
        null=True, blank=True, help_text="As `visits.domain.planning.replan.stored_change` writes it."
    )
    reasons = models.JSONField(
        null=True, blank=True, help_text="Why the plan is as it is; `of` in it says which plan it speaks of."
    )
    asked_at = models.DateTimeField()
    asked_by = models.ForeignKey(
        "accounts.User",
        on_delete=models.PROTECT,
        related_name="+",
        null=True,
        blank=True,
        help_text="Nobody where the evening's look ahead asked.",
    )
    finished_at = models.DateTimeField(null=True, blank=True)
    accepted_at = models.DateTimeField(null=True, blank=True)

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["-asked_at"]

    @property
    def asker(self) -> str:
        return str(self.asked_by) if self.asked_by else "the evening’s look ahead"

    def __str__(self) -> str:
        return f"week of {self.monday}, {self.state}"

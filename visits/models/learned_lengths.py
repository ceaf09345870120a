from typing import ClassVar

from django.db import models

from trimops.tenancy.models import TenantModel


class LearnedLengths(TenantModel):
    """What a business's finished visits taught about how long its next ones last; learned anew at night.

    `rule` is a document of `visits.domain.visit_lengths.rule_document`, `drives` the figures of
    `visits.domain.arrival_windows.day_ahead.Spread` that are not in it. The `held_out_` fields say how the rule did on
    the newest visits, kept aside from it: mean absolute errors in minutes, and the share within their span.
    """

    rule = models.JSONField()
    drives = models.JSONField(default=dict)
    taught_by = models.JSONField(
        default=dict, help_text="What it was learned from: number, newest, own figures."
    )
    visits = models.PositiveIntegerField(help_text="Finished visits it was learned from.")
    learned_at = models.DateTimeField()
    held_out_visits = models.PositiveIntegerField()
    held_out_error = models.FloatField(help_text="Minutes, by the learned rule.")
    held_out_flat_error = models.FloatField(help_text="Minutes, by one figure per cow.")
    held_out_figures_error = models.FloatField(help_text="Minutes, by the planning figures.")
    held_out_kept = models.FloatField(help_text="Share within the span that is to hold four in five.")

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [models.UniqueConstraint(fields=["business"], name="one_learned_rule_per_business")]
        verbose_name_plural = "learned lengths"

    def __str__(self) -> str:
        return f"lengths of business {self.business_id}, from {self.visits} visits"

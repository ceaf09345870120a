from typing import ClassVar

from django.db import models

from trimops.tenancy.models import TenantModel


class BusinessFigures(TenantModel):
    """A business's own figures. Each map holds only what differs from the defaults of the domain.

    `visit_length` feeds `visits.domain.visit_length.LengthFigures`, `rechecks` feeds
    `visits.domain.recheck_due.RecheckFigures`, `planning` feeds `visits.domain.planning_figures.PlanningFigures`,
    `trim` feeds `visits.domain.trim_figures.TrimFigures`, `kit` feeds `visits.domain.kit.kit_figures.KitFigures`.
    """

    visit_length = models.JSONField(default=dict, blank=True)
    rechecks = models.JSONField(default=dict, blank=True)
    planning = models.JSONField(default=dict, blank=True)
    trim = models.JSONField(default=dict, blank=True)
    kit = models.JSONField(default=dict, blank=True)

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [models.UniqueConstraint(fields=["business"], name="one_set_of_figures_per_business")]
        verbose_name_plural = "business figures"

    def __str__(self) -> str:
        return f"figures of business {self.business_id}"

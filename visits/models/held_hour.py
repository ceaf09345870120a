from datetime import datetime, timedelta
from typing import ClassVar

from django.core.validators import MinValueValidator
from django.db import models

from farms.models import Cow, Farm
from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet
from visits.domain.visit_states import VisitReason
from visits.models.van import Van
from visits.models.visit import Visit


class HeldState(models.TextChoices):
    HELD = "held", "Held"
    TAKEN = "taken", "Taken"
    LET_GO = "let_go", "Let go"
    EXPIRED = "expired", "Run out"


class HeldHourQuerySet(TenantQuerySet["HeldHour"]):
    def in_force(self, at: datetime) -> "HeldHourQuerySet":
        """Those that nobody else may have at that moment."""
        return self.filter(state=HeldState.HELD, until__gt=at)


class HeldHour(TenantModel):
    """An hour kept for a farm that is still making up its mind, until a stated moment.

    The farm is told a span, `first_start` to `last_start`; in it the van is kept free from `start` on. Where another
    visit must move for it, that one counts as moved to `moved_van` and `moved_start` for as long.
    """

    farm = models.ForeignKey(Farm, on_delete=models.CASCADE, related_name="held_hours")
    reason = models.CharField(max_length=10, choices=choices_of(VisitReason))
    asked_by = models.CharField(max_length=120)
    due_from = models.DateField()
    due_until = models.DateField()
    head_count = models.PositiveSmallIntegerField(validators=[MinValueValidator(1)])
    corrective_count = models.PositiveSmallIntegerField(default=0)
    mobility_scale = models.CharField(max_length=8, blank=True)
    mobility_score = models.PositiveSmallIntegerField(null=True, blank=True)
    note = models.TextField(blank=True)
    minutes = models.PositiveSmallIntegerField()

    van = models.ForeignKey(Van, on_delete=models.PROTECT, related_name="held_hours")
    start = models.DateTimeField()
    first_start = models.DateTimeField()
    last_start = models.DateTimeField()
    moved_visit = models.ForeignKey(
        Visit, on_delete=models.SET_NULL, related_name="moved_by", null=True, blank=True
    )
    moved_van = models.ForeignKey(Van, on_delete=models.PROTECT, related_name="+", null=True, blank=True)
    moved_start = models.DateTimeField(null=True, blank=True)

    held_at = models.DateTimeField()
    until = models.DateTimeField(db_index=True)
    by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")
    state = models.CharField(max_length=8, choices=HeldState.choices, default=HeldState.HELD.value)
    ended_at = models.DateTimeField(null=True, blank=True)
    visit = models.ForeignKey(
        Visit,
        on_delete=models.SET_NULL,
        related_name="held_as",
        null=True,
        blank=True,
        help_text="What it became.",
    )

    farm_path: ClassVar[str | None] = "farm_id"
    objects: ClassVar = HeldHourQuerySet.as_manager()

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=models.Q(start__gte=models.F("first_start"), start__lte=models.F("last_start")),
                name="held_hour_lies_in_its_span",
            ),
            models.CheckConstraint(
                condition=models.Q(until__gt=models.F("held_at")), name="held_hour_ends_after_it_begins"
            ),
        ]
        ordering = ["start", "id"]

    def __str__(self) -> str:
        return f"hour held for farm {self.farm_id}, {self.get_state_display()}"

    @property
    def finish(self) -> datetime:
        """When the van is free again if the visit begins at `start`."""
        return self.start + timedelta(minutes=self.minutes)

    @property
    def latest_finish(self) -> datetime:
        return self.last_start + timedelta(minutes=self.minutes)

    @property
    def job(self) -> str:
        """The id of its job in the week problem."""
        return f"held-{self.pk}"

    def is_in_force(self, at: datetime) -> bool:
        return self.state == HeldState.HELD and self.until > at


class HeldCow(TenantModel):
    """A cow that the farm named for the hour held; she is asked for when the hour is taken."""

    held = models.ForeignKey(HeldHour, on_delete=models.CASCADE, related_name="cows")
    cow = models.ForeignKey(Cow, on_delete=models.CASCADE, related_name="+")
    why = models.CharField(max_length=200)
    mobility_scale = models.CharField(max_length=8, blank=True)
    mobility_score = models.PositiveSmallIntegerField(null=True, blank=True)
    lame_since = models.DateField(null=True, blank=True)

    farm_path: ClassVar[str | None] = "held__farm_id"

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["held", "cow"], name="one_naming_per_held_hour_and_cow")
        ]

    def __str__(self) -> str:
        return f"cow {self.cow_id} for held hour {self.held_id}"

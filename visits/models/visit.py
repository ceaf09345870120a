import uuid
from datetime import date, datetime
from typing import ClassVar

from django.db import models

from farms.models import Cow, Farm
from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet
from visits.domain.visit_states import VisitReason, VisitState
from visits.models.van import Van

OPEN_STATES = [state.value for state in VisitState if state.is_open]


class VisitQuerySet(TenantQuerySet["Visit"]):
    def open(self) -> "VisitQuerySet":
        return self.filter(state__in=OPEN_STATES)

    def in_state(self, *states: VisitState) -> "VisitQuerySet":
        return self.filter(state__in=[state.value for state in states])

    def starting_between(self, start: datetime, end: datetime) -> "VisitQuerySet":
        return self.filter(planned_start__gte=start, planned_start__lt=end)

    def due_by(self, day: date) -> "VisitQuerySet":
        return self.filter(due_from__lte=day)


class Visit(TenantModel):
    """One visit to one farm, from the wish to the finish."""

    uid = models.UUIDField(default=uuid.uuid4, editable=False, unique=True)
    farm = models.ForeignKey(Farm, on_delete=models.PROTECT, related_name="visits")
    reason = models.CharField(max_length=10, choices=choices_of(VisitReason))
    state = models.CharField(
        max_length=12, choices=choices_of(VisitState), default=VisitState.WANTED.value, db_index=True
    )
    asked_by = models.CharField(max_length=120, blank=True, help_text="Who asked: a person, or a rule.")
    asked_at = models.DateTimeField()
    note = models.TextField(blank=True)
    due_from = models.DateField(help_text="Not before this day.")
    due_until = models.DateField(help_text="Late after this day.")
    mobility_scale = models.CharField(max_length=8, blank=True)
    mobility_score = models.PositiveSmallIntegerField(null=True, blank=True)
    head_count = models.PositiveSmallIntegerField(help_text="Cows expected.")
    corrective_count = models.PositiveSmallIntegerField(default=0, help_text="Of these, lame or re-checked.")
    expected_minutes = models.PositiveSmallIntegerField()

    van = models.ForeignKey(Van, on_delete=models.PROTECT, related_name="visits", null=True, blank=True)
    planned_start = models.DateTimeField(null=True, blank=True, db_index=True)
    planned_finish = models.DateTimeField(null=True, blank=True)
    hour_told = models.DateTimeField(null=True, blank=True, help_text="The hour the farm has been told.")
    started_at = models.DateTimeField(null=True, blank=True)
    finished_at = models.DateTimeField(null=True, blank=True, db_index=True)
    called_off_at = models.DateTimeField(null=True, blank=True)
    called_off_because = models.CharField(max_length=200, blank=True)

    washed_down = models.BooleanField(default=False)
    hygiene_note = models.CharField(max_length=200, blank=True)
    signed_by = models.CharField(max_length=120, blank=True, help_text="Who received the account of it.")
    was_done = models.TextField(blank=True, help_text="What was done, as told at the sign-off.")
    farm_to_do = models.TextField(blank=True, help_text="What is the farm's to do, as told at the sign-off.")
    start_checked = models.BooleanField(
        default=False, help_text="Gloves, guards, eyes, knives, crush checked."
    )

    calendar_sequence = models.PositiveIntegerField(
        default=0, help_text="One higher whenever its time or state changes, and never otherwise (RFC 5546)."
    )
    # What calendars showed last: a visit that lost its hour is called off there, and needs the hour for it.
    last_start = models.DateTimeField(null=True, blank=True, editable=False)
    last_finish = models.DateTimeField(null=True, blank=True, editable=False)
    last_van = models.ForeignKey(
        Van, on_delete=models.SET_NULL, related_name="+", null=True, blank=True, editable=False
    )
    versions_dropped_at = models.DateTimeField(
        null=True,
        blank=True,
        editable=False,
        help_text="Earlier versions of what phones wrote went then; since then it takes nothing more.",
    )
    changed_at = models.DateTimeField()

    farm_path: ClassVar[str | None] = "farm_id"
    objects: ClassVar = VisitQuerySet.as_manager()

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=models.Q(due_until__gte=models.F("due_from")), name="visit_due_range_in_order"
            ),
            models.CheckConstraint(
                condition=models.Q(planned_start__isnull=True)
                | models.Q(planned_finish__gt=models.F("planned_start")),
                name="visit_finishes_after_it_starts",
            ),
        ]
        ordering = ["planned_start", "due_until", "id"]

    def __str__(self) -> str:
        return f"{self.get_reason_display()} visit, farm {self.farm_id}"

    @property
    def visit_state(self) -> VisitState:
        return VisitState(self.state)

    @property
    def is_closed(self) -> bool:
        return not self.visit_state.is_open


class AskedCow(TenantModel):
    """A cow named for a visit, and why."""

    visit = models.ForeignKey(Visit, on_delete=models.CASCADE, related_name="asked_cows")
    cow = models.ForeignKey(Cow, on_delete=models.PROTECT, related_name="askings")
    why = models.CharField(max_length=200)
    mobility_scale = models.CharField(max_length=8, blank=True)
    mobility_score = models.PositiveSmallIntegerField(null=True, blank=True)
    lame_since = models.DateField(null=True, blank=True, help_text="Since when, as the farm tells it.")

    farm_path: ClassVar[str | None] = "visit__farm_id"

    class Meta:
        constraints = [models.UniqueConstraint(fields=["visit", "cow"], name="one_asking_per_visit_and_cow")]

    def __str__(self) -> str:
        return f"cow {self.cow_id} for visit {self.visit_id}"


class VisitEvent(TenantModel):
    """One line of a visit's history: what it became, when, by whom, and a word why."""

    visit = models.ForeignKey(Visit, on_delete=models.CASCADE, related_name="events")
    before = models.CharField(max_length=12, choices=choices_of(VisitState), blank=True)
    after = models.CharField(max_length=12, choices=choices_of(VisitState))
    at = models.DateTimeField()
    by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+", null=True, blank=True)
    note = models.CharField(max_length=300, blank=True)

    farm_path: ClassVar[str | None] = "visit__farm_id"

    class Meta:
        ordering = ["at", "id"]

    def __str__(self) -> str:
        return f"visit {self.visit_id}: {self.before} to {self.after}"

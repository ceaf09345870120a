from typing import ClassVar

from django.db import models
from django.db.models.functions import Now

from trimops.accounts.models import User
from trimops.errands.domain.errand_states import ErrandState
from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel


class Errand(TenantModel):
    """One background job to be done for a business, kept from the transaction that wants it until it is done.

    The broker only carries its number: what the broker loses is handed out again from here. `day` is set on what is
    done once a day.
    """

    job = models.CharField(max_length=60)
    ids = models.JSONField(default=dict)
    day = models.DateField(null=True, blank=True)
    state = models.CharField(max_length=9, choices=choices_of(ErrandState), default=ErrandState.WAITING.value)
    queued_at = models.DateTimeField(db_default=Now())
    due_at = models.DateTimeField(db_default=Now(), help_text="Not before; after a failure the next try.")
    handed_out_at = models.DateTimeField(null=True, blank=True)
    began_at = models.DateTimeField(null=True, blank=True)
    ended_at = models.DateTimeField(null=True, blank=True, help_text="When it was done, or got stuck.")
    tries = models.PositiveSmallIntegerField(default=0)
    asked_by = models.ForeignKey(
        User,
        on_delete=models.PROTECT,
        related_name="+",
        null=True,
        blank=True,
        help_text="Whose doing asked for it; empty: the timetable's.",
    )
    is_fault = models.BooleanField(
        default=False,
        help_text="What went wrong was not foreseen; else a rule of the work said no, in plain words.",
    )
    last_words = models.CharField(max_length=500, blank=True, help_text="What went wrong last.")

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(
                # In this order it also tells who has a job done for a day, without reading the days before.
                fields=["job", "day", "business"],
                condition=models.Q(day__isnull=False),
                name="one_daily_errand_per_day",
            ),
        ]
        indexes = [
            models.Index(
                fields=["state", "due_at"],
                condition=~models.Q(state=ErrandState.DONE.value),
                name="errands_to_do",
            ),
            models.Index(fields=["business", "state", "-ended_at"], name="errands_of_business"),
        ]
        ordering = ["due_at", "id"]

    def __str__(self) -> str:
        return f"{self.job} {self.ids}"

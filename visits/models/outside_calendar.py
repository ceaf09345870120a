from typing import ClassVar

from django.db import models

from trimops.tenancy.models import TenantModel
from visits.models.van import Van


class OutsideCalendar(TenantModel):
    """A calendar of the trimmer's own, kept elsewhere, whose busy times keep a van in.

    Read again and again from `url`, or once from a file (`url` is empty). `etag` and `last_modified` are as the other
    side wrote them. `asked_at`: last tried; `fetched_at`: last read or found unchanged; `read_at`: last read whole,
    for `read_until` and the days before it. `left_out`: entries of which no sense could be made.
    """

    van = models.ForeignKey(Van, on_delete=models.CASCADE, related_name="outside_calendars")
    name = models.CharField(max_length=60)
    url = models.URLField(max_length=500, blank=True)
    only_whole_days = models.BooleanField(default=False, help_text="Hours alone keep no van in.")
    keeps_titles = models.BooleanField(default=False, help_text="What an entry is called is kept and shown.")
    etag = models.CharField(max_length=200, blank=True, editable=False)
    last_modified = models.CharField(max_length=60, blank=True, editable=False)
    asked_at = models.DateTimeField(null=True, blank=True, editable=False)
    fetched_at = models.DateTimeField(null=True, blank=True, editable=False)
    read_at = models.DateTimeField(null=True, blank=True, editable=False)
    read_until = models.DateField(null=True, blank=True, editable=False)
    left_out = models.PositiveSmallIntegerField(default=0, editable=False)
    last_words = models.CharField(max_length=300, blank=True, editable=False, help_text="Why it failed.")
    made_at = models.DateTimeField()
    made_by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["name", "id"]

    def __str__(self) -> str:
        return self.name


class OutsideBusy(TenantModel):
    """A stretch in which somebody is busy by an outside calendar. Whole days run from midnight to midnight there."""

    calendar = models.ForeignKey(OutsideCalendar, on_delete=models.CASCADE, related_name="busy")
    uid = models.CharField(max_length=255, blank=True)
    starts = models.DateTimeField()
    ends = models.DateTimeField()
    is_all_day = models.BooleanField(default=False)
    summary = models.CharField(max_length=80, blank=True)

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=models.Q(ends__gt=models.F("starts")), name="outside_busy_ends_after"
            )
        ]
        indexes = [models.Index(fields=["calendar", "starts"], name="outside_busy_by_start")]
        ordering = ["starts", "id"]
        verbose_name_plural = "outside busy"

    def __str__(self) -> str:
        return f"calendar {self.calendar_id}: {self.starts} to {self.ends}"

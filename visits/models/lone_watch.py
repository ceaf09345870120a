"""The watch over a trimmer who works alone: a business's rules, whom to tell, each watch and what came of it."""

from typing import ClassVar

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models
from django.db.models.functions import Now

from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel
from visits.domain.lone_watch.watch_states import CallAnswer, CalledBy, WatchEnd, WatchState
from visits.models.van import Van
from visits.models.visit import Visit

MINUTES = [MinValueValidator(5), MaxValueValidator(240)]


class WatchRules(TenantModel):
    """Whether the business has lone work watched, and how long is waited at each step."""

    is_on = models.BooleanField("the watch is on", default=False)
    watches_plan = models.BooleanField("visits that nobody began are watched too", default=True)
    grace_minutes = models.PositiveSmallIntegerField(default=30, validators=MINUTES)
    answer_minutes = models.PositiveSmallIntegerField(default=10, validators=MINUTES)
    repeat_minutes = models.PositiveSmallIntegerField(default=15, validators=MINUTES)
    changed_at = models.DateTimeField()
    changed_by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [models.UniqueConstraint(fields=["business"], name="one_set_of_watch_rules")]
        verbose_name_plural = "watch rules"

    def __str__(self) -> str:
        return "on" if self.is_on else "off"


class WatchContact(TenantModel):
    """Somebody who is told when a trimmer does not check in; the first in turn first."""

    name = models.CharField(max_length=120)
    phone = models.CharField(max_length=40, blank=True)
    email = models.EmailField(blank=True)
    told_by = models.CharField(max_length=4, choices=choices_of(CalledBy), default=CalledBy.MAIL.value)
    van = models.ForeignKey(
        Van, on_delete=models.CASCADE, related_name="+", null=True, blank=True, help_text="Empty: all vans."
    )
    turn = models.PositiveSmallIntegerField(
        default=1, validators=[MinValueValidator(1), MaxValueValidator(99)]
    )

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["turn", "id"]

    def __str__(self) -> str:
        return self.name


class LoneWatch(TenantModel):
    """One watch over one visit. A test has no visit. `next_at`: when it is looked at again, None: never."""

    visit = models.ForeignKey(Visit, on_delete=models.CASCADE, related_name="watches", null=True, blank=True)
    trimmer = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")
    van = models.ForeignKey(Van, on_delete=models.PROTECT, related_name="+", null=True, blank=True)
    is_test = models.BooleanField(default=False)
    is_by_plan = models.BooleanField(default=False, help_text="Nobody has said yet that the visit was begun.")
    is_quiet_place = models.BooleanField(default=False, help_text="The farm is known to have no network.")
    state = models.CharField(max_length=8, choices=choices_of(WatchState), default=WatchState.WATCHING.value)
    began_at = models.DateTimeField()
    expected_finish = models.DateTimeField()
    next_at = models.DateTimeField(null=True, blank=True)
    well_until = models.DateTimeField(null=True, blank=True)
    asked_at = models.DateTimeField(null=True, blank=True)
    answer_until = models.DateTimeField(null=True, blank=True)
    was_away = models.BooleanField(default=False, help_text="Looked at too late once: we were away.")
    told_at = models.DateTimeField(null=True, blank=True)
    tellings = models.PositiveSmallIntegerField(default=0)
    calls_made = models.PositiveSmallIntegerField(
        default=0, help_text="Numbers the calls, and never goes back."
    )
    taken_at = models.DateTimeField(null=True, blank=True)
    taken_by = models.CharField(max_length=120, blank=True)
    last_heard_at = models.DateTimeField(null=True, blank=True, help_text="The trimmer's phone or pages.")
    ended_at = models.DateTimeField(null=True, blank=True)
    ended_how = models.CharField(max_length=10, choices=choices_of(WatchEnd), blank=True)

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["visit"],
                condition=~models.Q(state=WatchState.ENDED.value),
                name="one_open_watch_per_visit",
            ),
        ]
        indexes = [
            models.Index(
                fields=["next_at"], condition=models.Q(next_at__isnull=False), name="watches_to_look_at"
            ),
            models.Index(
                fields=["business", "trimmer"],
                condition=~models.Q(state=WatchState.ENDED.value),
                name="open_watches_of_trimmer",
            ),
        ]
        ordering = ["-began_at", "-id"]
        verbose_name_plural = "lone watches"

    def __str__(self) -> str:
        return f"{self.state} since {self.began_at:%Y-%m-%d %H:%M}"

    @property
    def watch_state(self) -> WatchState:
        return WatchState(self.state)

    @property
    def is_over(self) -> bool:
        return self.watch_state is WatchState.ENDED


class WatchCall(TenantModel):
    """One person asked or told, and the link by which they answer; only its hash is kept."""

    watch = models.ForeignKey(LoneWatch, on_delete=models.CASCADE, related_name="calls")
    number = models.PositiveSmallIntegerField()
    contact = models.ForeignKey(
        WatchContact, on_delete=models.SET_NULL, related_name="+", null=True, blank=True
    )
    is_trimmer = models.BooleanField(default=False)
    name = models.CharField(max_length=120)
    phone = models.CharField(max_length=40, blank=True)
    email = models.EmailField(blank=True)
    at = models.DateTimeField()
    secret_hash = models.CharField(max_length=64, unique=True, editable=False)
    answer = models.CharField(max_length=9, choices=choices_of(CallAnswer), blank=True)
    answered_at = models.DateTimeField(null=True, blank=True)

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [models.UniqueConstraint(fields=["watch", "number"], name="one_watch_call_per_number")]
        ordering = ["number"]

    def __str__(self) -> str:
        return f"{self.number}: {self.name}"


class WatchEvent(TenantModel):
    """One line of a watch's log: what happened `at`, and when we came to know of it."""

    watch = models.ForeignKey(LoneWatch, on_delete=models.CASCADE, related_name="events")
    at = models.DateTimeField()
    noted_at = models.DateTimeField(db_default=Now())
    words = models.CharField(max_length=300)

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        return self.words

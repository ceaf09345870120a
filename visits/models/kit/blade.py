from typing import ClassVar

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models

from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel
from visits.domain.kit.blade_kinds import (
    BladeFault,
    BladeKind,
    BladeState,
    EdgeBefore,
    EdgeFelt,
    Hand,
    SharpenMethod,
    TurnPart,
)
from visits.models.van import Van
from visits.models.visit import Visit


class Blade(TenantModel):
    """One knife or grinder disc, from bought to retired. Without a van it lies in the store."""

    van = models.ForeignKey(Van, on_delete=models.PROTECT, related_name="blades", null=True, blank=True)
    name = models.CharField(max_length=40)
    kind = models.CharField(max_length=12, choices=choices_of(BladeKind), default=BladeKind.HOOF_KNIFE.value)
    hand = models.CharField(max_length=6, choices=choices_of(Hand), default=Hand.RIGHT.value)
    edge_angle = models.DecimalField(
        max_digits=4,
        decimal_places=1,
        null=True,
        blank=True,
        validators=[MinValueValidator(5), MaxValueValidator(60)],
        help_text="Degrees.",
    )
    thickness_mm = models.DecimalField(
        max_digits=4,
        decimal_places=2,
        null=True,
        blank=True,
        validators=[MinValueValidator(0.2), MaxValueValidator(20)],
        help_text="Of the steel behind the bevel, mm.",
    )
    bought_on = models.DateField()
    cost = models.DecimalField(
        max_digits=10, decimal_places=2, null=True, blank=True, validators=[MinValueValidator(0)]
    )
    hours_limit = models.DecimalField(
        max_digits=6,
        decimal_places=1,
        null=True,
        blank=True,
        validators=[MinValueValidator(0.1)],
        help_text="Of a disc: hours after which it is to be replaced, as its maker or your own practice has it.",
    )
    state = models.CharField(
        max_length=12, choices=choices_of(BladeState), default=BladeState.BOUGHT.value, db_index=True
    )
    state_since = models.DateTimeField()
    fault = models.CharField(max_length=8, choices=choices_of(BladeFault), blank=True)
    note = models.CharField(max_length=200, blank=True)

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["van", "name"], name="one_blade_per_name_and_van"),
            models.UniqueConstraint(
                fields=["business", "name"],
                condition=models.Q(van__isnull=True),
                name="one_blade_per_name_in_the_store",
            ),
        ]
        ordering = ["name"]

    def __str__(self) -> str:
        return self.name


class BladeEvent(TenantModel):
    """A person said what becomes of a blade: in use, at grinding, out of use, retired."""

    blade = models.ForeignKey(Blade, on_delete=models.CASCADE, related_name="events")
    state = models.CharField(max_length=12, choices=choices_of(BladeState))
    fault = models.CharField(max_length=8, choices=choices_of(BladeFault), blank=True)
    note = models.CharField(max_length=200, blank=True)
    at = models.DateTimeField()
    by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+", null=True, blank=True)

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["at", "id"]

    def __str__(self) -> str:
        return f"blade {self.blade_id}: {self.state}"


class Sharpening(TenantModel):
    """A new edge: how it was made, by whom, how it felt, and how the edge before it ended."""

    blade = models.ForeignKey(Blade, on_delete=models.CASCADE, related_name="sharpenings")
    at = models.DateTimeField()
    method = models.CharField(max_length=10, choices=choices_of(SharpenMethod), blank=True)
    grit = models.PositiveSmallIntegerField(
        null=True, blank=True, validators=[MinValueValidator(10), MaxValueValidator(20000)]
    )
    angle = models.DecimalField(
        max_digits=4,
        decimal_places=1,
        null=True,
        blank=True,
        validators=[MinValueValidator(5), MaxValueValidator(60)],
        help_text="Degrees.",
    )
    minutes = models.DecimalField(
        max_digits=5, decimal_places=1, null=True, blank=True, validators=[MinValueValidator(0)]
    )
    done_by = models.CharField(max_length=80, blank=True, help_text="Who sharpened it.")
    felt = models.CharField(max_length=10, choices=choices_of(EdgeFelt), blank=True)
    before = models.CharField(
        max_length=10, choices=choices_of(EdgeBefore), default=EdgeBefore.NOT_SAID.value
    )
    cows_since_last = models.PositiveSmallIntegerField(
        null=True, blank=True, help_text="Cows of the edge before, counted by hand; empty: by the day's work."
    )
    note = models.CharField(max_length=200, blank=True)

    farm_path: ClassVar[str | None] = None

    class Meta:
        ordering = ["at", "id"]

    def __str__(self) -> str:
        return f"blade {self.blade_id} at {self.at}"


class BladeTurn(TenantModel):
    """At this moment of a visit the trimmer took other blades in hand, or said what became of one."""

    visit = models.ForeignKey(Visit, on_delete=models.PROTECT, related_name="blade_turns")
    record = models.UUIDField()
    at = models.DateTimeField()
    by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [models.UniqueConstraint(fields=["business", "record"], name="one_row_per_blade_turn")]
        ordering = ["at", "id"]

    def __str__(self) -> str:
        return f"blades of visit {self.visit_id} at {self.at}"


class BladeSaid(TenantModel):
    """What a turn says of one blade."""

    turn = models.ForeignKey(BladeTurn, on_delete=models.CASCADE, related_name="said")
    blade = models.ForeignKey(Blade, on_delete=models.PROTECT, related_name="said")
    part = models.CharField(max_length=10, choices=choices_of(TurnPart))

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["turn", "blade", "part"], name="each_part_once_per_turn")
        ]

    def __str__(self) -> str:
        return f"blade {self.blade_id} {self.part}"

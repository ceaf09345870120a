"""What came in from phones at the crush, beside the rows that it was turned into."""

from typing import ClassVar

from django.db import models

from farms.models import Cow
from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel
from visits.domain.crush_writing import WritingKind
from visits.domain.feet import Foot
from visits.models.kit.consumable import Consumable
from visits.models.trim import Trim
from visits.models.visit import Visit


class CrushWriting(TenantModel):
    """One version of one thing noted at the crush, never changed. Those that do not show go after some years.

    `made_at` is the phone's own clock; `placed_at` is the same moment on ours and, with `after`, decides which
    version shows.
    """

    uid = models.UUIDField()
    visit = models.ForeignKey(Visit, on_delete=models.PROTECT, related_name="writings")
    kind = models.CharField(max_length=8, choices=choices_of(WritingKind))
    record = models.UUIDField(help_text="What this is a version of, as named on the phone that began it.")
    after = models.UUIDField(null=True, blank=True, help_text="The writing it was edited from.")
    cow = models.ForeignKey(
        Cow, on_delete=models.PROTECT, related_name="crush_writings", null=True, blank=True
    )
    is_gone = models.BooleanField(default=False, help_text="Taken back by the trimmer.")
    content = models.JSONField(default=dict)
    phone = models.UUIDField()
    made_at = models.DateTimeField()
    placed_at = models.DateTimeField()
    received_at = models.DateTimeField()
    by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [models.UniqueConstraint(fields=["business", "uid"], name="writing_arrives_once")]
        indexes = [models.Index(fields=["visit", "kind", "cow"], name="writings_of_a_cow")]
        ordering = ["id"]

    def __str__(self) -> str:
        return f"{self.kind} {self.uid}"


class AddedCow(TenantModel):
    """A cow added at the crush, by the id that the phone gave her; two phones may have added the same cow."""

    uid = models.UUIDField()
    cow = models.ForeignKey(Cow, on_delete=models.CASCADE, related_name="added_as")

    farm_path: ClassVar[str | None] = None

    class Meta:
        constraints = [models.UniqueConstraint(fields=["business", "uid"], name="cow_is_added_once")]

    def __str__(self) -> str:
        return f"cow {self.cow_id} as {self.uid}"


class TrimPhoto(TenantModel):
    """A picture of a foot (JPEG), taken at the crush. `trim` follows when the cow herself has arrived.

    `size` and `sha256` are of what the phone sent; `picture` is what was drawn anew of it.
    """

    uid = models.UUIDField()
    visit = models.ForeignKey(Visit, on_delete=models.PROTECT, related_name="photos")
    record = models.UUIDField(help_text="The record of the cow, as named on the phone.")
    trim = models.ForeignKey(Trim, on_delete=models.SET_NULL, related_name="photos", null=True, blank=True)
    foot = models.CharField(max_length=2, choices=choices_of(Foot), blank=True)
    taken_at = models.DateTimeField()
    received_at = models.DateTimeField()
    by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")
    size = models.PositiveIntegerField(help_text="Bytes.")
    sha256 = models.CharField(max_length=64)
    picture = models.BinaryField()

    farm_path: ClassVar[str | None] = "visit__farm_id"

    class Meta:
        constraints = [models.UniqueConstraint(fields=["business", "uid"], name="photo_arrives_once")]
        ordering = ["taken_at", "id"]

    def __str__(self) -> str:
        return f"photo {self.uid}"


class WashDown(TenantModel):
    """Crush, knives and boots washed down and disinfected: with what, how strong, how long, when."""

    visit = models.ForeignKey(Visit, on_delete=models.PROTECT, related_name="wash_downs")
    record = models.UUIDField()
    substance = models.CharField(max_length=80, help_text="Active substance, as on the product's label.")
    dilution = models.CharField(max_length=40, help_text="1:100, 2 % …")
    contact_minutes = models.DecimalField(max_digits=5, decimal_places=1)
    consumable = models.ForeignKey(
        Consumable,
        on_delete=models.PROTECT,
        related_name="wash_downs",
        null=True,
        blank=True,
        help_text="Which of the stock was mixed; empty: the farm's own, or not said.",
    )
    litres = models.DecimalField(
        max_digits=6, decimal_places=1, null=True, blank=True, help_text="Of what was mixed."
    )
    washed_at = models.DateTimeField()
    by = models.ForeignKey("accounts.User", on_delete=models.PROTECT, related_name="+")

    farm_path: ClassVar[str | None] = "visit__farm_id"

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["business", "record"], name="one_row_per_wash_down"),
            models.CheckConstraint(
                condition=models.Q(contact_minutes__gte=0), name="contact_time_is_not_negative"
            ),
        ]
        ordering = ["washed_at", "id"]

    def __str__(self) -> str:
        return f"{self.substance} {self.dilution} at {self.washed_at}"

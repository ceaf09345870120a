from typing import ClassVar

from django.db import models

from farms.domain.cow_status import CowStatus
from farms.domain.identity_kind import IdentityKind
from farms.models.farm import Farm
from trimops.kernel.choices import choices_of
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet

GONE = [status.value for status in CowStatus if not status.is_on_farm]


class CowQuerySet(TenantQuerySet["Cow"]):
    def on_farm(self) -> "CowQuerySet":
        return self.exclude(status__in=GONE)

    def known_as(self, text: str) -> "CowQuerySet":
        """Cows with that number, or any identity that ends in it (a trimmer reads the last digits)."""
        found = models.Q(number__iexact=text) | models.Q(identities__value__iendswith=text)
        return self.filter(found).distinct()


class Cow(TenantModel):
    """One animal of a farm. `number` is what the farm calls her; her other identities hang below."""

    farm = models.ForeignKey(Farm, on_delete=models.CASCADE, related_name="cows")
    number = models.CharField(max_length=20, help_text="The number the farm calls her by.")
    status = models.CharField(max_length=10, choices=choices_of(CowStatus), default=CowStatus.MILKING.value)
    born_on = models.DateField(null=True, blank=True)
    calved_on = models.DateField(null=True, blank=True)
    calving_due = models.DateField(null=True, blank=True)
    dry_off_due = models.DateField(null=True, blank=True)
    entered_on = models.DateField(
        null=True, blank=True, help_text="First day known in the herd; empty: not told."
    )
    left_on = models.DateField(null=True, blank=True, help_text="Sold or dead since that day.")
    note = models.CharField(max_length=200, blank=True)

    farm_path: ClassVar[str | None] = "farm_id"
    objects: ClassVar = CowQuerySet.as_manager()

    class Meta:
        # Two cows of one farm may wear the same number (a borrowed collar, a re-used brand): found, not forbidden.
        indexes = [models.Index(fields=["farm", "number"], name="cow_by_number")]
        ordering = ["number", "id"]

    def __str__(self) -> str:
        return self.number


class CowIdentity(TenantModel):
    """One way a cow is known besides her number. `value` is normalised by `farms.domain` for its kind."""

    cow = models.ForeignKey(Cow, on_delete=models.CASCADE, related_name="identities")
    kind = models.CharField(max_length=20, choices=choices_of(IdentityKind))
    value = models.CharField(max_length=40)

    farm_path: ClassVar[str | None] = "cow__farm_id"

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["cow", "kind", "value"], name="one_identity_once_per_cow")
        ]
        indexes = [models.Index(fields=["business", "kind", "value"], name="cow_by_identity")]
        ordering = ["kind", "value"]

    def __str__(self) -> str:
        return self.value


class Calving(TenantModel):
    """One calving of a cow. `lactation` is the number of the lactation that it began (1: first calf)."""

    cow = models.ForeignKey(Cow, on_delete=models.CASCADE, related_name="calvings")
    calved_on = models.DateField()
    lactation = models.PositiveSmallIntegerField(null=True, blank=True)

    farm_path: ClassVar[str | None] = "cow__farm_id"

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["cow", "calved_on"], name="one_calving_a_day"),
            models.CheckConstraint(
                condition=models.Q(lactation__isnull=True) | models.Q(lactation__gte=1),
                name="lactations_count_from_one",
            ),
        ]
        ordering = ["calved_on"]

    def __str__(self) -> str:
        return f"cow {self.cow_id} calved {self.calved_on}"

"""What is said and shown of a cow."""

from collections.abc import Mapping
from datetime import date

from django.db.models import Prefetch, prefetch_related_objects
from rest_framework import serializers

from farms.domain.cow_status import CowStatus
from farms.domain.electronic_id import NotAnElectronicId, normalise_electronic_id
from farms.domain.herd_list import HIGHEST_LACTATION
from farms.domain.identity_kind import IdentityKind
from farms.models import Calving, Cow, CowIdentity
from trimops.api.fields import Day
from trimops.api.op import Said, Shape
from trimops.api.rows import RowContent
from trimops.kernel.scope import Scope

TOLD = ["number", "status", "born_on", "calved_on", "calving_due", "dry_off_due", "left_on", "note"]
MARKS = [kind for kind in IdentityKind if kind is not IdentityKind.MANAGEMENT_NUMBER]


def details_of(scope: Scope) -> "tuple[Prefetch[Shape], Prefetch[Shape]]":
    """What is shown of cows besides their own row. Two queries."""
    return (
        Prefetch("identities", queryset=CowIdentity.objects.within(scope)),
        Prefetch("calvings", queryset=Calving.objects.within(scope).order_by("calved_on")),
    )


def with_details(scope: Scope, cow: Cow) -> Cow:
    """The cow with all that is shown of her."""
    prefetch_related_objects([cow], *details_of(scope))
    return cow


class MarkField(serializers.CharField):
    """A number or mark besides her own number, kept in the form of its kind; empty takes it away."""

    def __init__(self, **options: Shape) -> None:
        super().__init__(max_length=20, required=False, allow_blank=True, **options)


class CowWord(RowContent):
    """What may be said of a cow. `lactation` is the one that her last calving began (1: first calf)."""

    official_tag = MarkField(help_text="As printed; blanks do not matter.")
    electronic_id = MarkField(help_text="15 digits.")
    freeze_brand = MarkField()
    collar = MarkField()
    lactation = serializers.IntegerField(
        min_value=1, max_value=HIGHEST_LACTATION, required=False, allow_null=True
    )

    class Meta:
        model = Cow
        fields = [*TOLD, *(kind.value for kind in MARKS), "lactation"]

    def validate_electronic_id(self, value: str) -> str:
        try:
            return normalise_electronic_id(value) if value else ""
        except NotAnElectronicId as fault:
            raise serializers.ValidationError(str(fault)) from fault

    def validate(self, attrs: Said) -> Said:
        # because: among many rows `instance` is none of them; who knows the cow asks again with her
        if faults := cow_faults(attrs, self.instance):
            raise serializers.ValidationError(faults)
        return attrs


def cow_faults(said: Mapping[str, Shape], cow: Cow | None) -> dict[str, str]:
    """What cannot be meant together, by field, where `cow` is known already (None: she is new)."""

    def now(name: str, new: object) -> Shape:
        return said[name] if name in said else getattr(cow, name, new)

    status = CowStatus(now("status", CowStatus.MILKING))
    calved_on: date | None = now("calved_on", None)
    faults = {}
    if said.get("left_on") and status.is_on_farm:
        faults["left_on"] = "Say as status whether she was sold or is dead."
    if said.get("lactation") and not calved_on:
        faults["lactation"] = "Say on which day she calved, too."
    return faults


class CalvingLine(serializers.Serializer):  # type: ignore[type-arg]
    """One calving; `lactation` is the number of the lactation that it began, where it is known."""

    calved_on = Day()
    lactation = serializers.IntegerField(allow_null=True)


class CowShown(RowContent):
    """A cow as she is known: her numbers and marks ("" for none), her days, her calvings in their order."""

    official_tag = serializers.CharField(read_only=True)
    electronic_id = serializers.CharField(read_only=True)
    freeze_brand = serializers.CharField(read_only=True)
    collar = serializers.CharField(read_only=True)
    calvings = CalvingLine(many=True, read_only=True)

    class Meta:
        model = Cow
        fields = ["id", "farm", *TOLD, "entered_on", *(kind.value for kind in MARKS), "calvings"]

    def to_representation(self, instance: Cow) -> Said:
        worn = {row.kind: row.value for row in instance.identities.all()}
        for kind in MARKS:
            setattr(instance, kind.value, worn.get(kind.value, ""))
        told: Said = super().to_representation(instance)
        return told


def fill(cow: Cow, said: Said) -> tuple[dict[IdentityKind, str], int | None]:
    """Put what was said onto the cow; back come her marks and the lactation, which stand in rows of their own."""
    for name in TOLD:
        if name in said:
            setattr(cow, name, said[name])
    marks: dict[IdentityKind, str] = {kind: said[kind.value] for kind in MARKS if kind.value in said}
    return marks, said.get("lactation")

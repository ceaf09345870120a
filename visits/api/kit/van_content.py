"""What is said and shown of a van."""

from collections.abc import Mapping, Sequence
from dataclasses import fields
from decimal import Decimal

from django.db.models import Prefetch, prefetch_related_objects
from drf_spectacular.utils import extend_schema_field
from rest_framework import serializers

from trimops.accounts.models import Membership, User
from trimops.accounts.roles import AT_THE_CRUSH
from trimops.api.fields import ClockTime
from trimops.api.op import Said, Shape
from trimops.api.rows import MOST_ID, RowContent
from visits.models import DayOff, ShiftPattern, Van, VanOut
from visits.services.save_van import VanHours

TOLD = [
    *("name", "trimmer", "base_name", "base_latitude", "base_longitude"),
    *("cost_per_day", "cost_per_work_hour", "cost_per_km", "is_active"),
]
HOURS = [each.name for each in fields(VanHours)]


@extend_schema_field({"type": "integer", "minimum": 1, "maximum": MOST_ID})
class DriverField(serializers.Field):  # type: ignore[type-arg]
    """Somebody of the business who works at the crush, by the id of the person."""

    def to_internal_value(self, data: Shape) -> User:
        key = int(data) if isinstance(data, (int, float)) else 0
        seats = Membership.objects.filter(business=self.context["scope"].business_id, user_id=key)
        seat = seats.filter(role__in=AT_THE_CRUSH, ended_at__isnull=True).select_related("user").first()
        if seat is None:
            raise serializers.ValidationError("Nobody of that id works at the crush here.")
        return seat.user

    def to_representation(self, value: Shape) -> int:
        return int(value.pk if isinstance(value, User) else value)


class VanHoursWord(serializers.Serializer):  # type: ignore[type-arg]
    """When it goes out: the same hours on each of `weekdays` (0 is Monday), and when the meal may begin."""

    weekdays = serializers.ListField(
        child=serializers.IntegerField(min_value=0, max_value=6), min_length=1, max_length=7
    )
    starts = ClockTime()
    ends = ClockTime()
    max_work_minutes = serializers.IntegerField(min_value=60, max_value=960)
    max_cows = serializers.IntegerField(min_value=1, max_value=300)
    meal_minutes = serializers.IntegerField(min_value=0, max_value=120)
    meal_earliest = ClockTime()
    meal_latest = ClockTime()

    def validate_weekdays(self, days: list[int]) -> list[int]:
        if len(set(days)) < len(days):
            raise serializers.ValidationError("One day stands there twice.")
        return days

    def validate(self, attrs: Said) -> Said:
        pairs = (("starts", "ends"), ("meal_earliest", "meal_latest"))
        late = {
            last: "This is not after the time before it."
            for first, last in pairs
            if attrs[last] <= attrs[first]
        }
        if late:
            raise serializers.ValidationError(late)
        return attrs


class VanWord(RowContent):
    """What may be said of a van. Costs are in the business's currency."""

    trimmer = DriverField(help_text="Who drives it: the id of the person.")
    hours = VanHoursWord()

    class Meta:
        model = Van
        fields = [*TOLD, "hours"]
        extra_kwargs = {
            name: {"min_value": Decimal(0)} for name in ("cost_per_day", "cost_per_work_hour", "cost_per_km")
        }


class DayOffShown(serializers.Serializer):  # type: ignore[type-arg]
    """A day on which the van stays in."""

    day = serializers.DateField()
    reason = serializers.CharField(allow_blank=True)


class VanOutShown(RowContent):
    """A stretch of time in which the van does no work, though it would by its hours."""

    class Meta:
        model = VanOut
        fields = ["id", "since", "until", "because"]


class VanShown(RowContent):
    """A van with its hours (null: it has none), its days off to come and the times when it is out of action."""

    trimmer = DriverField(source="trimmer_id", read_only=True)
    trimmer_name = serializers.CharField(source="trimmer.name", read_only=True)
    hours = VanHoursWord(read_only=True, allow_null=True)
    days_off = DayOffShown(many=True, read_only=True)
    outs = VanOutShown(many=True, read_only=True)

    class Meta:
        model = Van
        fields = ["id", *TOLD, "trimmer_name", "hours", "days_off", "outs"]

    def to_representation(self, instance: Van) -> Said:
        prefetch_related_objects([instance], *details_of(self.context))
        rows = list(instance.shift_patterns.all())
        instance.hours = hours_of(rows)  # type: ignore[attr-defined]
        told: Said = super().to_representation(instance)
        return told


def details_of(context: Mapping[str, Shape]) -> "tuple[Prefetch[Shape], ...]":
    """What is shown of vans besides their own row. Three queries."""
    scope, now = context["scope"], context["now"]
    today = now.astimezone(context["seat"].business.zone).date()
    return (
        Prefetch("shift_patterns", queryset=ShiftPattern.objects.within(scope).order_by("weekday")),
        Prefetch("days_off", queryset=DayOff.objects.within(scope).filter(day__gte=today)),
        Prefetch("outs", queryset=VanOut.objects.within(scope).filter(until__gt=now)),
    )


def hours_of(rows: Sequence[ShiftPattern]) -> VanHours | None:
    """The hours as they are said: those of the first day, on all days on which it goes out."""
    if not rows:
        return None
    first = {name: getattr(rows[0], name) for name in HOURS if name != "weekdays"}
    return VanHours(weekdays=[row.weekday for row in rows], **first)

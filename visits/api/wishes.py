"""What is asked for: why, between which days, for how many cows, and which of them by name."""

from rest_framework import serializers

from farms.models import Cow
from trimops.api.fields import Day, OneOf
from trimops.api.op import Said
from trimops.api.rows import MOST_ID
from visits.domain.mobility import MobilityScale
from visits.domain.visit_states import VisitReason
from visits.services.ask_visit import CowWish, VisitWish

MOST_COWS = 500
MOST_NAMED = 100


class ScoreWord(serializers.Serializer):  # type: ignore[type-arg]
    """How she walks, on its own scale; both or neither."""

    mobility_scale = OneOf(MobilityScale, allow_null=True, default=None)
    mobility_score = serializers.IntegerField(min_value=0, max_value=5, allow_null=True, default=None)

    def validate(self, attrs: Said) -> Said:
        scale, score = attrs.get("mobility_scale"), attrs.get("mobility_score")
        if (scale is None) != (score is None):
            raise serializers.ValidationError("A score goes with its scale: give both or neither.")
        if scale is not None and score not in scale.scores:
            raise serializers.ValidationError({"mobility_score": "This scale has no such score."})
        return attrs


class CowWishWord(ScoreWord):
    """A cow that is to be seen for sure."""

    cow = serializers.IntegerField(min_value=1, max_value=MOST_ID, help_text="The id of a cow of the farm.")
    why = serializers.CharField(max_length=200, required=False, default="Asked for")
    lame_since = Day(allow_null=True, default=None)


class WishWord(ScoreWord):
    """What is wanted of a visit. `mobility_score` is the worst of its cows."""

    reason = OneOf(VisitReason)
    asked_by = serializers.CharField(
        max_length=120,
        required=False,
        help_text="Who asks; you, if nothing is said. Of a farm client it is always themselves.",
    )
    due_from = Day(help_text="Not before this day.")
    due_until = Day(help_text="Late after this day.")
    head_count = serializers.IntegerField(min_value=1, max_value=MOST_COWS)
    corrective_count = serializers.IntegerField(
        min_value=0, max_value=MOST_COWS, default=0, help_text="Of these, lame or re-checked."
    )
    note = serializers.CharField(max_length=2000, allow_blank=True, default="")
    cows: "serializers.ListSerializer[Said]" = serializers.ListSerializer(
        child=CowWishWord(), max_length=MOST_NAMED, default=list
    )

    def validate_cows(self, named: list[Said]) -> list[Said]:
        """The same with the cows themselves, read at once."""
        keys = [each["cow"] for each in named]
        if len(set(keys)) != len(keys):
            raise serializers.ValidationError("A cow is named once.")
        cows = Cow.objects.within(self.context["scope"]).in_bulk(keys)
        if strange := [key for key in keys if key not in cows]:
            raise serializers.ValidationError(f"There is no such cow here: {strange[0]}.")
        return [{**each, "cow": cows[each["cow"]]} for each in named]


def wish_of(content: Said, asker: str) -> VisitWish:
    """The content of a `WishWord` as the services want it; `asker` where nobody is named."""
    return VisitWish(
        reason=content["reason"],
        asked_by=content.get("asked_by") or asker[:120],
        due_from=content["due_from"],
        due_until=content["due_until"],
        head_count=content["head_count"],
        corrective_count=content["corrective_count"],
        mobility_scale=content["mobility_scale"],
        mobility_score=content["mobility_score"],
        note=content["note"],
        cows=tuple(map(_cow_wish, content["cows"])),
    )


def _cow_wish(word: Said) -> CowWish:
    return CowWish(
        word["cow"], word["why"], word["mobility_scale"], word["mobility_score"], word["lame_since"]
    )

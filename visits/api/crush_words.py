"""The sending of a phone as the description tells it; `visits.domain.read_batch` is what reads it."""

from rest_framework import serializers

from trimops.api.fields import OneOf
from visits.api.described_word import MOMENT, UID, Described, or_null
from visits.domain.crush_writing import WritingKind
from visits.domain.read_content import LARGEST_KEY
from visits.domain.visit_states import VisitState
from visits.services.sift_writings import Outcome

BEGUN = {
    "type": "object",
    "properties": {"at": MOMENT, "checked": {"type": ["boolean", "null"]}},
    "required": ["at"],
    "additionalProperties": False,
}
WRITINGS = {
    "type": "array",
    "items": {},
    "description": (
        "At most 100, each judged by itself and answered in order, so that a bad one holds up nothing. A writing has "
        "`uid` (its name for good), `kind` (cow, wash, kit, blade, sign_off), `record` (what it is a version of), "
        "`after` (the writing that it was edited from, or null), `made_at` (by the phone's clock), `not_before`, "
        "`is_gone` (taken back) and `content` by its kind. Of a cow: `cow` {`id`} or {`new`: {`uid`, `number`, "
        "`is_another`}}, `entry` with `feet` [{`foot` LF RF LH RH, `findings` [{`lesion`, `claw`, `zone` 0 to 12, "
        "`severity` 1 to 3, `dd_stage`}], `actions` [{`kind`, `claw`, `block_kind`}], measures and signs}], "
        "`mobility_scale`, `mobility_score`, `note`, `for_vet`; and `told_vet`. Of a wash-down: `substance`, "
        "`dilution`, `contact_minutes`, `washed_at`, `consumable`, `litres`. Of kit: `consumable`, `extra`. Of blades: "
        "`in_hand`, `went_dull`, `cracked`, `chipped`, `at`. Of a sign-off: `received_by`, `was_done`, `farm_to_do`, "
        "`washed_down`, `hygiene_note`. Faults come back with their path (`content.entry.feet[0].foot`)."
    ),
}


class CrushBatchWord(serializers.Serializer):  # type: ignore[type-arg]
    """What one phone sends at once. `seen` is the cursor of the last answer."""

    phone = Described(UID, is_needed=True)
    sent_at = Described(MOMENT, is_needed=True)
    seen = Described({"type": ["integer", "null"], "minimum": 0, "maximum": LARGEST_KEY})
    begun = Described(or_null(BEGUN))
    writings = Described(or_null(WRITINGS))


class CrushFaultShown(serializers.Serializer):  # type: ignore[type-arg]
    """One thing to mend."""

    field = serializers.CharField(allow_blank=True)
    reason = serializers.CharField()


class CrushAnswerShown(serializers.Serializer):  # type: ignore[type-arg]
    """What became of one writing; `beside` is what another phone wrote without having seen it."""

    uid = serializers.CharField(allow_blank=True)
    outcome = serializers.ChoiceField([each.value for each in Outcome])
    faults = CrushFaultShown(many=True)
    shows = serializers.UUIDField(allow_null=True)
    beside = serializers.ListField(child=serializers.UUIDField())


class CrushVisitShown(serializers.Serializer):  # type: ignore[type-arg]
    """Where the visit stands."""

    state = OneOf(VisitState)
    started_at = serializers.DateTimeField(allow_null=True)
    finished_at = serializers.DateTimeField(allow_null=True)


class CrushOtherShown(serializers.Serializer):  # type: ignore[type-arg]
    """A writing of another phone, as it is kept."""

    uid = serializers.UUIDField()
    kind = OneOf(WritingKind)
    record = serializers.UUIDField()
    cow_id = serializers.IntegerField(allow_null=True)
    after = serializers.UUIDField(allow_null=True)
    made_at = serializers.DateTimeField()
    not_before = serializers.DateTimeField(allow_null=True)
    is_gone = serializers.BooleanField()
    content = serializers.DictField()
    placed_at = serializers.DateTimeField()
    by = serializers.CharField()
    phone = serializers.UUIDField()
    shows = serializers.BooleanField()
    beside = serializers.ListField(child=serializers.UUIDField())


class CrushBatchShown(serializers.Serializer):  # type: ignore[type-arg]
    """The answer to a sending; while there is `more`, ask again with `cursor` as `seen`."""

    now = serializers.DateTimeField()
    cursor = serializers.IntegerField()
    more = serializers.BooleanField()
    visit = CrushVisitShown()
    answers = CrushAnswerShown(many=True)
    others = CrushOtherShown(many=True)


class PhotoKeptShown(serializers.Serializer):  # type: ignore[type-arg]
    """What was sent: its size and SHA-256."""

    uid = serializers.UUIDField()
    size = serializers.IntegerField()
    sha256 = serializers.CharField()

"""A visit as the API shows it; a farm client sees nothing that is the office's."""

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.op import Said
from trimops.api.rows import RowContent
from trimops.web.seat import Seat
from visits.domain.visit_states import VisitState, may_move
from visits.models import AskedCow, Visit, VisitEvent
from visits.selectors.draft_time import DraftTime
from visits.selectors.draft_view import CHANGEABLE

OFFICE_ONLY = ("asked_by", "note", "called_off_because")
OF_THE_ACCOUNT = ("hygiene_note", "signed_by", "was_done", "farm_to_do")
STEPS: dict[str, tuple[Action, frozenset[VisitState]]] = {
    "plan": (Action.KEEP_VISITS, frozenset({VisitState.WANTED, VisitState.PLANNED, VisitState.CONFIRMED})),
    "confirm": (Action.KEEP_VISITS, frozenset({VisitState.PLANNED})),
    "tell_hour": (Action.KEEP_VISITS, frozenset({VisitState.PLANNED, VisitState.CONFIRMED})),
    "put_off": (Action.KEEP_VISITS, frozenset({VisitState.PLANNED, VisitState.CONFIRMED})),
    "call_off": (
        Action.KEEP_VISITS,
        frozenset(state for state in VisitState if may_move(state, VisitState.CALLED_OFF)),
    ),
    "start": (Action.WORK_AT_CRUSH, frozenset({VisitState.PLANNED, VisitState.CONFIRMED})),
    "finish": (Action.WORK_AT_CRUSH, frozenset({VisitState.UNDER_WAY})),
    "expect_cows": (Action.KEEP_VISITS, frozenset(CHANGEABLE)),
    "change_draft": (Action.KEEP_DRAFT, frozenset(CHANGEABLE)),
}
"""What can be done with a visit, by whom, from which states."""


class VisitShown(RowContent):
    """A visit. What is the office's alone is null for a farm client, and what stands in the account of it is null for
    one without the right to read reports."""

    asked_by = serializers.CharField(allow_null=True)
    note = serializers.CharField(allow_null=True)
    called_off_because = serializers.CharField(allow_null=True)
    hygiene_note = serializers.CharField(allow_null=True)
    signed_by = serializers.CharField(allow_null=True)
    was_done = serializers.CharField(allow_null=True)
    farm_to_do = serializers.CharField(allow_null=True)

    class Meta:
        model = Visit
        fields = [
            "id", "uid", "farm", "reason", "state", "asked_by", "asked_at", "note", "due_from", "due_until",
            "mobility_scale", "mobility_score", "head_count", "corrective_count", "expected_minutes", "van",
            "planned_start", "planned_finish", "hour_told", "started_at", "finished_at", "called_off_at",
            "called_off_because", "washed_down", "hygiene_note", "signed_by", "was_done", "farm_to_do",
            "start_checked", "changed_at",
        ]  # fmt: skip

    def to_representation(self, instance: Visit) -> Said:
        told: Said = super().to_representation(instance)
        seat: Seat = self.context["seat"]
        if seat.scope.is_farm_client:
            told |= dict.fromkeys(OFFICE_ONLY)
        if not seat.allows(Action.SEE_WORK):
            told |= dict.fromkeys(OF_THE_ACCOUNT)
        return told


class EventShown(RowContent):
    """One line of a visit's history. `by` and `note` are null for a farm client: they may speak of other farms."""

    by = serializers.CharField(allow_null=True, source="by.name", default=None)
    note = serializers.CharField(allow_null=True)

    class Meta:
        model = VisitEvent
        fields = ["before", "after", "at", "by", "note"]

    def to_representation(self, instance: VisitEvent) -> Said:
        told: Said = super().to_representation(instance)
        is_farm = self.context["seat"].scope.is_farm_client
        return {**told, "by": None, "note": None} if is_farm else told


class AskedCowShown(RowContent):
    """A cow named for the visit, and why."""

    class Meta:
        model = AskedCow
        fields = ["cow", "why", "mobility_scale", "mobility_score", "lame_since"]


class DraftLengthShown(serializers.Serializer):  # type: ignore[type-arg]
    """What the draft list takes as it stands. `room`: the cows for which there is time; null where nobody can tell."""

    cows = serializers.IntegerField()
    minutes = serializers.IntegerField()
    planned_minutes = serializers.IntegerField()
    planned_for = serializers.IntegerField(help_text="Cows that fit into the planned minutes.")
    room = serializers.IntegerField(allow_null=True)
    over = serializers.IntegerField(help_text="Cows more than the time allows.")


class WholeVisitShown(VisitShown):
    """A visit with its history, the cows asked for, what its draft list takes while it may change (else null), and
    what you may do with it now."""

    events = EventShown(many=True)
    asked_cows = AskedCowShown(many=True)
    draft_length = DraftLengthShown(allow_null=True)
    may = serializers.ListField(child=serializers.ChoiceField([(step, step) for step in STEPS]))

    class Meta(VisitShown.Meta):
        fields = [*VisitShown.Meta.fields, "events", "asked_cows", "draft_length", "may"]


class WholeVisit:
    """A visit with what is shown beside its row; reads as the row does."""

    def __init__(self, visit: Visit, seat: Seat, length: DraftTime | None) -> None:
        self.visit, self.draft_length = visit, length
        scope = seat.scope
        self.events = list(VisitEvent.objects.within(scope).filter(visit=visit).select_related("by"))
        self.asked_cows = list(AskedCow.objects.within(scope).filter(visit=visit).order_by("id"))
        self.may = steps_of(visit, seat)

    def __getattr__(self, name: str) -> object:
        return getattr(self.visit, name)


def steps_of(visit: Visit, seat: Seat) -> list[str]:
    """What this person may do with the visit as it stands."""
    state = visit.visit_state
    return [step for step, (action, states) in STEPS.items() if state in states and seat.allows(action)]

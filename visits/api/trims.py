"""What was seen and done at the crush: of a visit, of a cow, and how a cow's words came about."""

from rest_framework import serializers

from farms.models import Cow
from trimops.accounts.actions import Action
from trimops.api.kinds import RowApi, RowsApi, ToldApi
from trimops.api.op import Op, Said
from trimops.api.rows import RowContent
from trimops.kernel.errors import NotFound
from trimops.tenancy.querysets import TenantQuerySet
from visits.domain.crush_entry import SIGNS
from visits.models import ClawAction, Finding, Referral, Trim, TrimmedFoot, Visit
from visits.selectors.cow_versions import cow_versions
from visits.selectors.visit_story import trims_with_feet

ORDERS = {"recorded_at": ("recorded_at", "id"), "id": ("id",)}


class FindingShown(RowContent):
    """A lesion that was seen; no diagnosis. `severity` 1 slight to 3 severe; `zone` by the numbers of `zone_map`."""

    class Meta:
        model = Finding
        fields = ["lesion", "claw", "zone", "zone_map", "severity", "dd_stage"]


class ActionShown(RowContent):
    """One thing that was done to a claw, or to the whole foot."""

    class Meta:
        model = ClawAction
        fields = ["kind", "claw", "block_kind"]


class FootShown(RowContent):
    """One lifted foot: measures (mm, degrees), the signs looked for, what was seen and done."""

    findings = FindingShown(many=True)
    actions = ActionShown(many=True)

    class Meta:
        model = TrimmedFoot
        fields = [
            "foot", "wall_mm", "wall_measured_from", "toe_angle", "look_again_days", "for_vet", *SIGNS, "findings",
            "actions",
        ]  # fmt: skip


class ReferralShown(RowContent):
    """What is the vet's."""

    class Meta:
        model = Referral
        fields = ["foot", "reason", "told_whom", "told_at"]


class TrimShown(RowContent):
    """One cow at the crush on one visit, all four feet as they were noted. `client_id` was made on the phone."""

    number = serializers.CharField(source="cow.number", help_text="The cow's.")
    recorded_by = serializers.CharField(source="recorded_by.name")
    feet = FootShown(many=True)
    referrals = ReferralShown(many=True)

    class Meta:
        model = Trim
        fields = [
            "id", "client_id", "visit", "cow", "number", "kind", "mobility_scale", "mobility_score",
            "belly_band_minutes", "crush_seconds", "for_vet", "told_vet", "note", "recorded_at", "recorded_by", "feet",
            "referrals",
        ]  # fmt: skip


class VisitTrimsApi(RowsApi[Trim]):
    """The cows done on a visit. What is noted at the crush comes in by the writings of phones, and is changed and taken
    back by them; a cow that was taken back is not among them."""

    model = Trim
    ops = {
        "get": Op(
            Action.SEE_COWS,
            "list_visit_trims",
            "The cows done on a visit",
            shows=TrimShown,
            lists=True,
            orders=ORDERS,
        )
    }

    def rows(self) -> TenantQuerySet[Trim]:
        return trims_with_feet(self.scope).filter(visit=self.fetch(Visit, self.kwargs["pk"]))


class CowTrimsApi(RowsApi[Trim]):
    """What was ever seen and done at a cow's feet."""

    model = Trim
    ops = {
        "get": Op(
            Action.SEE_COWS, "list_cow_trims", "A cow's trims", shows=TrimShown, lists=True, orders=ORDERS
        )
    }

    def rows(self) -> TenantQuerySet[Trim]:
        return trims_with_feet(self.scope).filter(cow=self.fetch(Cow, self.kwargs["pk"]))


class TrimApi(RowApi[Trim]):
    """One cow at the crush on one visit."""

    model = Trim
    ops = {"get": Op(Action.SEE_COWS, "read_trim", "One cow at the crush", shows=TrimShown)}

    def row(self, *, is_locked: bool = False) -> Trim:
        found = trims_with_feet(self.scope).filter(pk=self.kwargs["pk"]).first()
        if found is None:
            raise NotFound("There is nothing at this address.")
        return found


class VersionShown(serializers.Serializer):  # type: ignore[type-arg]
    """One version of what was noted: when by our clock, by whom, in words. `shows`: it is the one that counts."""

    at = serializers.DateTimeField()
    by = serializers.CharField()
    words = serializers.ListField(child=serializers.CharField())
    shows = serializers.BooleanField()
    is_gone = serializers.BooleanField(help_text="She was taken back with it.")


class VersionsShown(serializers.Serializer):  # type: ignore[type-arg]
    """The versions of one visit, newest first."""

    visit = serializers.IntegerField(source="visit.pk")
    is_taken_back = serializers.BooleanField()
    versions = VersionShown(many=True)


class CowVersionsShown(serializers.Serializer):  # type: ignore[type-arg]
    """By visit, where there is more than one version."""

    items = VersionsShown(many=True)


class CowVersionsApi(ToldApi):
    """How what is noted of a cow came about: each version that phones wrote, who wrote it, which one counts. Nothing
    that was written at the crush is ever lost; what was mended or taken back stands here."""

    ops = {
        "get": Op(
            Action.SEE_EVERY_FARM,
            "list_cow_versions",
            "The versions of a cow's words",
            shows=CowVersionsShown,
        )
    }

    def told(self) -> Said:
        return {"items": list(cow_versions(self.scope, self.fetch(Cow, self.kwargs["pk"])).values())}

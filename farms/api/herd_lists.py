"""A herd list is handed in, looked at, and only then applied."""

import base64
import binascii

from rest_framework import serializers

from farms.api.of_farm import FarmRowsApi
from farms.domain.cow_status import CowStatus
from farms.models import HerdImport
from farms.selectors.herd_plan import herd_list_of, herd_plan_of
from farms.services.apply_herd_list import apply_herd_list
from farms.services.keep_herd_list import keep_herd_list
from trimops.accounts.actions import Action
from trimops.api.fields import Exactly, OneOf
from trimops.api.kinds import RowApi, StepApi
from trimops.api.op import Op, Said, Shape
from trimops.api.rows import RowContent

MOST_LETTERS = 1_900_000
"""Of a file in base64: 1.4 MB. A list of 5,000 cows has a quarter of that."""


class HerdListWord(serializers.Serializer):  # type: ignore[type-arg]
    """A CSV or XLSX file with a row of headings, one of which is `number`; `content` is its bytes in base64."""

    file_name = serializers.CharField(max_length=200)
    content = Exactly(r"^[A-Za-z0-9+/]+={0,2}$", max_length=MOST_LETTERS)

    def validate_content(self, value: str) -> bytes:
        try:
            return base64.b64decode(value, validate=True)
        except binascii.Error as fault:
            raise serializers.ValidationError("This is no base64.") from fault


class HerdListShown(RowContent):
    """A list that was handed in. `outcome` counts what it did; null until it is applied."""

    outcome = serializers.DictField(child=serializers.IntegerField(), allow_null=True, read_only=True)

    class Meta:
        model = HerdImport
        fields = ["id", "farm", "file_name", "uploaded_at", "applied_at", "outcome"]

    def to_representation(self, instance: HerdImport) -> Said:
        told: Said = super().to_representation(instance)
        return told if instance.applied_at else {**told, "outcome": None}


class ListedCow(serializers.Serializer):  # type: ignore[type-arg]
    """A row of the list that is a new cow. `line` counts as a spreadsheet shows it."""

    line = serializers.IntegerField()
    number = serializers.CharField()
    official_tag = serializers.CharField()
    electronic_id = serializers.CharField()
    status = OneOf(CowStatus, allow_null=True)
    hints = serializers.ListField(child=serializers.CharField())


class ListedFieldChange(serializers.Serializer):  # type: ignore[type-arg]
    """One thing that the list says otherwise, in words."""

    field = serializers.CharField()
    before = serializers.CharField()
    after = serializers.CharField()


class ListedChange(serializers.Serializer):  # type: ignore[type-arg]
    """A row of the list that says something else of a known cow."""

    cow = serializers.IntegerField(source="cow_id")
    line = serializers.IntegerField(source="row.line")
    number = serializers.CharField(source="row.number")
    changes = ListedFieldChange(many=True)


class ListedFault(serializers.Serializer):  # type: ignore[type-arg]
    """A row of the list that is left out until it is mended."""

    line = serializers.IntegerField(source="row.line")
    number = serializers.CharField(source="row.number")
    faults = serializers.ListField(child=serializers.CharField())


class HerdListLookedAt(HerdListShown):
    """A list, and what it would change as the cows stand now. Once applied it finds nothing more to do."""

    new = ListedCow(many=True, read_only=True)
    changed = ListedChange(many=True, read_only=True)
    unchanged = serializers.IntegerField(read_only=True)
    refused = ListedFault(many=True, read_only=True)
    unknown_headings = serializers.ListField(child=serializers.CharField(), read_only=True)

    class Meta(HerdListShown.Meta):
        fields = [*HerdListShown.Meta.fields, "new", "changed", "unchanged", "refused", "unknown_headings"]

    def to_representation(self, instance: HerdImport) -> Said:
        plan = herd_plan_of(instance)
        for name in ("new", "changed", "unchanged", "refused"):
            setattr(instance, name, getattr(plan, name))
        instance.unknown_headings = herd_list_of(instance).unknown_headings  # type: ignore[attr-defined]
        return super().to_representation(instance)


class HerdListsApi(FarmRowsApi[HerdImport]):
    """The herd lists of a farm. Handing one in changes nothing but shows what it would change; what cannot be read as a
    list at all is refused."""

    model = HerdImport
    read_at = "herd-lists"
    ops = {
        "get": Op(
            Action.KEEP_COWS,
            "list_herd_lists",
            "The herd lists of a farm",
            shows=HerdListShown,
            lists=True,
            orders={"newest": ("-id",), "id": ("id",)},
        ),
        "post": Op(
            Action.KEEP_COWS,
            "hand_in_herd_list",
            "Hand in a herd list, to look at",
            takes=HerdListWord,
            shows=HerdListLookedAt,
            status=201,
            repeats=True,
        ),
    }

    def rows(self) -> Shape:
        # because: the file itself may be megabytes, and a list of lists does not show it
        return super().rows().defer("content")

    def make(self, content: Said) -> HerdImport:
        return keep_herd_list(
            farm=self.farm,
            file_name=content["file_name"],
            content=content["content"],
            at=self.now,
            by=self.seat.user,
        )


class HerdListApi(RowApi[HerdImport]):
    """One herd list, and what it would change now."""

    model = HerdImport
    related = ("farm", "business")
    ops = {"get": Op(Action.KEEP_COWS, "read_herd_list", "One herd list, looked at", shows=HerdListLookedAt)}


class HerdListAppliedApi(StepApi[HerdImport]):
    """The list is applied as it was looked at: new cows, changed ones; rows with faults are left out."""

    model = HerdImport
    ops = {
        "post": Op(
            Action.KEEP_COWS,
            "apply_herd_list",
            "Apply a herd list",
            shows=HerdListShown,
            repeats=True,
        )
    }

    def act(self, row: HerdImport, content: Said) -> HerdImport:
        apply_herd_list(herd_import=row, at=self.now)
        return self.row()

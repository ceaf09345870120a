"""Sharpenings: what was sharpened, and an evening's more."""

from decimal import Decimal

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.asked import WholeNumber
from trimops.api.fields import Moment, OneOf, many
from trimops.api.kinds import DoApi, RowsApi
from trimops.api.op import Filter, Op, Said, Shape
from trimops.api.rows import MOST_ID, RowContent
from visits.api.kit.picked import KeyField, paths, picked
from visits.domain.kit.blade_kinds import EdgeBefore, EdgeFelt, SharpenMethod
from visits.models import Blade, Sharpening
from visits.services.kit.sharpen_blades import SharpenedBlade, SharpenWord, sharpen_blades

MOST_BLADES = 50


class SharpenedWord(serializers.Serializer):  # type: ignore[type-arg]
    """One blade: how its edge was before, how the new one feels, its angle in degrees, and whether a chip is out."""

    blade = KeyField()
    before = OneOf(EdgeBefore, required=False)
    felt = OneOf(EdgeFelt, required=False, allow_null=True)
    angle = serializers.DecimalField(
        max_digits=4,
        decimal_places=1,
        min_value=Decimal(5),
        max_value=Decimal(60),
        required=False,
        allow_null=True,
    )
    minutes = serializers.DecimalField(
        max_digits=5,
        decimal_places=1,
        min_value=Decimal(0),
        max_value=Decimal(600),
        required=False,
        allow_null=True,
    )
    cows_by_hand = serializers.IntegerField(min_value=0, max_value=2000, required=False, allow_null=True)
    chip_is_out = serializers.BooleanField(required=False)


class SharpeningWord(serializers.Serializer):  # type: ignore[type-arg]
    """How all of them were sharpened, when (left out: now) and by whom."""

    sharpened_at = Moment(required=False)
    method = OneOf(SharpenMethod, required=False, allow_null=True)
    grit = serializers.IntegerField(min_value=10, max_value=20_000, required=False, allow_null=True)
    done_by = serializers.CharField(max_length=80, required=False, allow_blank=True)
    note = serializers.CharField(max_length=200, required=False, allow_blank=True)
    blades = many(SharpenedWord, least=1, most=MOST_BLADES)

    def validate_blades(self, lines: list[Said]) -> list[Said]:
        if len({line["blade"] for line in lines}) < len(lines):
            raise serializers.ValidationError("One blade stands there twice.")
        return lines


class SharpeningShown(RowContent):
    """A new edge: how it was made, and how the edge before it ended."""

    class Meta:
        model = Sharpening
        fields = [
            *("id", "blade", "at", "method", "grit", "angle", "minutes", "done_by", "felt", "before"),
            *("cows_since_last", "note"),
        ]


class SharpeningsTold(serializers.Serializer):  # type: ignore[type-arg]
    """The new edges, one for each blade."""

    sharpenings = SharpeningShown(many=True, read_only=True)


class SharpeningsApi(RowsApi[Sharpening]):
    """Sharpenings, newest first: how, how long it took, how the new edge felt."""

    model = Sharpening
    ops = {
        "get": Op(
            Action.SEE_KNIVES,
            "list_sharpenings",
            "Sharpenings",
            shows=SharpeningShown,
            lists=True,
            orders={"newest": ("-at",), "at": ("at",)},
            filters={"blade": Filter(WholeNumber(min_value=1, max_value=MOST_ID), "blade_id")},
        )
    }


class SharpenApi(DoApi):
    """Blades were sharpened, all of them or none: each has a new edge. Cracked blades, loose handles and chipped discs
    are refused, since grinding does not mend them."""

    ops = {
        "post": Op(
            Action.KEEP_KNIVES,
            "sharpen_blades",
            "Knives were sharpened",
            takes=SharpeningWord,
            shows=SharpeningsTold,
            repeats=True,
        )
    }

    def act(self, content: Said) -> Shape:
        blades = picked(Blade, self.scope, paths("blades", "blade", content["blades"]))
        word = SharpenWord(
            [_said(line, blades[line["blade"]]) for line in content["blades"]],
            content.get("sharpened_at", self.now),
            content.get("method"),
            content.get("grit"),
            content.get("done_by", ""),
            content.get("note", ""),
        )
        return {"sharpenings": sharpen_blades(word=word, at=self.now, by=self.seat.user)}


def _said(line: Said, blade: Blade) -> SharpenedBlade:
    return SharpenedBlade(
        blade,
        line.get("before", EdgeBefore.NOT_SAID),
        line.get("felt"),
        line.get("angle"),
        line.get("minutes"),
        line.get("cows_by_hand"),
        line.get("chip_is_out", False),
    )

"""Knives and discs: all of them, one more, one mended, what becomes of one, how long their edges will last."""

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.asked import WholeNumber
from trimops.api.fields import OneOf
from trimops.api.kinds import RowApi, RowsApi, StepApi, ToldApi, set_fields
from trimops.api.op import Filter, Op, Said, Shape
from trimops.api.rows import MOST_ID, RowContent
from visits.domain.kit.blade_kinds import BladeFault, BladeKind, BladeState
from visits.domain.kit.put_right import PutRight
from visits.models import Blade
from visits.selectors.kit.van_edges import known_edges
from visits.services.kit.change_blade_state import BladeStateWord, change_blade_state
from visits.services.kit.save_blade import save_blade

TOLD = [
    *(
        "name",
        "van",
        "kind",
        "hand",
        "bought_on",
        "edge_angle",
        "thickness_mm",
        "hours_limit",
        "cost",
        "note",
    ),
]


class BladeWord(RowContent):
    """What may be said of a blade. `van` null: it lies in the store."""

    class Meta:
        model = Blade
        fields = TOLD


class NewBladeWord(BladeWord):
    """A blade that is put on the list. `was_used`: nobody knows what its first edge has cut."""

    was_used = serializers.BooleanField(required=False)

    class Meta(BladeWord.Meta):
        fields = [*TOLD, "was_used"]


class BladeShown(RowContent):
    """A blade, where it stands in its life and since when. One that is out of use for a fault may hurt somebody."""

    class Meta:
        model = Blade
        fields = ["id", *TOLD, "state", "state_since", "fault"]


class BladesApi(RowsApi[Blade]):
    """The knives and discs. Two of one name in one van are refused."""

    model = Blade
    ops = {
        "get": Op(
            Action.SEE_KNIVES,
            "list_blades",
            "The knives and discs",
            shows=BladeShown,
            lists=True,
            orders={"name": ("name",), "id": ("id",)},
            filters={
                "van": Filter(WholeNumber(min_value=1, max_value=MOST_ID), "van_id"),
                "kind": Filter(serializers.ChoiceField([each.value for each in BladeKind]), "kind"),
                "state": Filter(serializers.ChoiceField([each.value for each in BladeState]), "state"),
            },
        ),
        "post": Op(
            Action.KEEP_KNIVES,
            "add_blade",
            "One more knife or disc",
            takes=NewBladeWord,
            shows=BladeShown,
            status=201,
            repeats=True,
        ),
    }

    def make(self, content: Said) -> Blade:
        was_used = content.pop("was_used", False)
        blade = Blade(business=self.seat.business)
        set_fields(blade, content)
        return save_blade(blade=blade, was_used=was_used, at=self.now, by=self.seat.user)


class BladeApi(RowApi[Blade]):
    """One knife or disc: whose edge is reckoned, what is wrong with it. What becomes of it is a step of its own."""

    model = Blade
    related = ("business",)
    ops = {
        "get": Op(Action.SEE_KNIVES, "read_blade", "One knife or disc", shows=BladeShown),
        "patch": Op(
            Action.KEEP_KNIVES,
            "change_blade",
            "Change a knife or disc",
            takes=BladeWord,
            shows=BladeShown,
            changes=True,
        ),
    }

    def change(self, row: Blade, content: Said) -> Blade:
        set_fields(row, content)
        return save_blade(blade=row, at=self.now, by=self.seat.user)


class BladeStateWordTaken(serializers.Serializer):  # type: ignore[type-arg]
    """What it becomes: `in_use`, `at_grinding`, `out_of_use` (then say the fault) or `retired`. A blade with a fault
    comes back only with a word on how it was put right, by somebody who has looked at it."""

    state = OneOf(BladeState)
    fault = OneOf(BladeFault, required=False, allow_null=True)
    put_right = OneOf(PutRight, required=False, allow_null=True)
    note = serializers.CharField(max_length=150, required=False, allow_blank=True)


class BladeStateApi(StepApi[Blade]):
    """Somebody says what becomes of a blade. A cracked blade and a chipped disc are never mended, only replaced: any
    other word on them is refused."""

    model = Blade
    related = ("business",)
    ops = {
        "post": Op(
            Action.KEEP_KNIVES,
            "change_blade_state",
            "Say what becomes of a knife or disc",
            takes=BladeStateWordTaken,
            shows=BladeShown,
            repeats=True,
        )
    }

    def act(self, row: Blade, content: Said) -> Blade:
        word = BladeStateWord(
            content["state"], content.get("fault"), content.get("put_right"), content.get("note", "")
        )
        return change_blade_state(blade=row, word=word, at=self.now, by=self.seat.user)


class EdgeTold(serializers.Serializer):  # type: ignore[type-arg]
    """The edge on a blade: cows it has cut, and how many more it will. `sure`: with no more than the accepted chance of
    going dull before; `low`, `middle`, `high`: it goes dull by then in one of ten, in five, in nine of ten cases."""

    blade = serializers.IntegerField()
    may_cut = serializers.BooleanField()
    is_counted = serializers.BooleanField(help_text="Whether its cows are held against anything.")
    cows = serializers.IntegerField()
    sure = serializers.IntegerField()
    low = serializers.IntegerField()
    middle = serializers.IntegerField()
    high = serializers.IntegerField()
    is_dull = serializers.BooleanField()
    is_guess = serializers.BooleanField(
        help_text="By the business's own figure: too few edges to learn from."
    )


class EdgesTold(serializers.Serializer):  # type: ignore[type-arg]
    """The edges now. `accepted` is the accepted chance of going dull mid-visit, 0 to 1."""

    edges = EdgeTold(many=True)
    accepted = serializers.FloatField()


class EdgesApi(ToldApi):
    """How long the edge on each blade will last, by what such edges have cut."""

    ops = {"get": Op(Action.SEE_KNIVES, "read_edges", "How long edges will last", shows=EdgesTold)}

    def told(self) -> Shape:
        known = known_edges(self.scope, self.now)
        edges = [
            {
                "blade": key,
                "may_cut": each.may_cut,
                "is_counted": each.is_counted,
                "is_guess": each.life.is_practice,
                **{
                    name: getattr(each.outlook, name) for name in ("sure", "low", "middle", "high", "is_dull")
                },
                "cows": each.edge.cows,
            }
            for key, each in sorted(known.on.items())
        ]
        return {"edges": edges, "accepted": known.limit}

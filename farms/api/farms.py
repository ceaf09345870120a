"""Farms: the list, one more, one of them, a change."""

from rest_framework import serializers

from farms.domain.hygiene import HygieneLevel
from farms.models import Farm
from farms.services.save_farm import save_farm
from trimops.accounts.actions import Action
from trimops.accounts.roles import FarmRight
from trimops.api.asked import WholeNumber, Words, YesOrNo
from trimops.api.kinds import RowApi, RowsApi, set_fields
from trimops.api.op import Filter, Op, Said, Shape
from trimops.api.rows import MOST_ID, RowContent
from trimops.web.seat import Seat

TOLD = [
    "name", "address", "country", "latitude", "longitude", "access_notes", "payer", "email", "phone", "vat_number",
    "herd_size", "routine_interval_days", "routine_cows", "rest_after_milking_minutes", "crush_place",
    "has_hard_standing", "has_water", "has_light", "power", "shelter", "hygiene_level", "hygiene_reason", "wash_rule",
    "is_active",
]  # fmt: skip
# Who pays is between the business and the payer; the rest goes to who may take all of the farm's data out.
OF_STAFF = ("payer",)
OF_WHO_HANDS_OVER = ("access_notes", "hygiene_reason", "vat_number")


class FarmWord(RowContent):
    """What may be said of a farm."""

    class Meta:
        model = Farm
        fields = TOLD


class FarmShown(RowContent):
    """A farm as it is known. To its own people `payer` is null, and `access_notes`, `hygiene_reason` and `vat_number`
    are where they may not take its data out."""

    access_notes = serializers.CharField(allow_null=True, read_only=True)
    hygiene_reason = serializers.CharField(allow_null=True, read_only=True)
    vat_number = serializers.CharField(allow_null=True, read_only=True)

    class Meta:
        model = Farm
        fields = ["id", *TOLD, "hygiene_since", "erased_at"]

    def to_representation(self, instance: Farm) -> Said:
        told: Said = super().to_representation(instance)
        return {**told, **dict.fromkeys(_hidden_from(self.context["seat"]))}


def _hidden_from(seat: Seat) -> tuple[str, ...]:
    if not seat.scope.is_farm_client:
        return ()
    return OF_STAFF if seat.may(FarmRight.HANDS_OVER) else (*OF_STAFF, *OF_WHO_HANDS_OVER)


class FarmsApi(RowsApi[Farm]):
    """The farms of the business; a farm client sees their own alone. Two farms of one name are refused."""

    model = Farm
    ops = {
        "get": Op(
            Action.SEE_FARMS,
            "list_farms",
            "The farms",
            shows=FarmShown,
            lists=True,
            orders={"name": ("name",), "id": ("id",), "herd_size": ("herd_size",)},
            filters={
                "is_active": Filter(YesOrNo(), "is_active"),
                "name": Filter(Words(max_length=120, help_text="Part of the name."), "name__icontains"),
                "payer": Filter(WholeNumber(min_value=1, max_value=MOST_ID), "payer_id"),
                "hygiene_level": Filter(
                    WholeNumber(min_value=min(HygieneLevel), max_value=max(HygieneLevel)), "hygiene_level"
                ),
                "herd_size_from": Filter(WholeNumber(min_value=0, max_value=2_147_483_647), "herd_size__gte"),
            },
        ),
        "post": Op(
            Action.KEEP_FARMS,
            "add_farm",
            "One more farm",
            takes=FarmWord,
            shows=FarmShown,
            status=201,
            repeats=True,
        ),
    }

    def rows(self) -> Shape:
        # because: a farm client's list must not be narrowed by what is hidden from them
        rows = super().rows()
        return rows.filter(pk=0) if self.scope.is_farm_client and "payer" in self.asked else rows

    def make(self, content: Said) -> Farm:
        farm = Farm(business=self.seat.business)
        set_fields(farm, content)
        return save_farm(farm=farm, at=self.now, by=self.seat.user)


class FarmApi(RowApi[Farm]):
    """One farm. One whose data were erased cannot be changed any more."""

    model = Farm
    ops = {
        "get": Op(Action.SEE_FARMS, "read_farm", "One farm", shows=FarmShown),
        "patch": Op(
            Action.KEEP_FARMS, "change_farm", "Change a farm", takes=FarmWord, shows=FarmShown, changes=True
        ),
    }

    def change(self, row: Farm, content: Said) -> Farm:
        set_fields(row, content)
        return save_farm(farm=row, at=self.now, by=self.seat.user)

"""Cows: all of them, those of a farm, one more, one of them, a change, a calving."""

from rest_framework import serializers

from farms.api.cow_content import CowShown, CowWord, details_of, fill, with_details
from farms.api.of_farm import FarmRowsApi
from farms.domain.cow_status import CowStatus
from farms.domain.ear_tag import normalise_ear_tag
from farms.domain.herd_list import HIGHEST_LACTATION
from farms.domain.identity_kind import IdentityKind
from farms.models import Cow
from farms.models.cow import GONE
from farms.services.note_calving import note_calving
from farms.services.save_cow import save_cow
from trimops.accounts.actions import Action
from trimops.api.asked import WholeNumber, Words, YesOrNo
from trimops.api.fields import Day
from trimops.api.kinds import RowApi, RowsApi, StepApi
from trimops.api.op import Filter, Op, Said, Shape
from trimops.api.rows import MOST_ID

ORDERS = {"number": ("number",), "id": ("id",)}
FILTERS = {
    "number": Filter(Words(max_length=20), "number__iexact"),
    "status": Filter(serializers.ChoiceField([each.value for each in CowStatus]), "status"),
}
ASKED: Said = {
    "is_on_farm": YesOrNo(help_text="Neither sold nor dead."),
    "official_tag": Words(max_length=40, help_text="The whole tag; blanks do not matter."),
    "electronic_id": Words(max_length=40, help_text="All 15 digits."),
    "known_as": Words(max_length=20, help_text="Her number, or the end of any mark she wears."),
}
OF_FARM = {"farm": Filter(WholeNumber(min_value=1, max_value=MOST_ID), "farm_id")}


def narrowed(rows: Shape, asked: Said) -> Shape:
    """The cows that the words of the query leave."""
    if "is_on_farm" in asked:
        rows = rows.exclude(status__in=GONE) if asked["is_on_farm"] else rows.filter(status__in=GONE)
    if "official_tag" in asked:
        tag = normalise_ear_tag(asked["official_tag"])
        rows = rows.filter(identities__kind=IdentityKind.OFFICIAL_TAG.value, identities__value=tag)
    if "electronic_id" in asked:
        digits = "".join(asked["electronic_id"].split())
        rows = rows.filter(identities__kind=IdentityKind.ELECTRONIC_ID.value, identities__value=digits)
    return rows.known_as(asked["known_as"]) if "known_as" in asked else rows


class CowsApi(RowsApi[Cow]):
    """The cows of all farms; a farm client sees those of their own farm alone."""

    model = Cow
    ops = {
        "get": Op(
            Action.SEE_COWS,
            "list_cows",
            "Cows of all farms",
            shows=CowShown,
            lists=True,
            orders=ORDERS,
            filters={**OF_FARM, **FILTERS},
            query=ASKED,
        )
    }

    def rows(self) -> Shape:
        return narrowed(super().rows(), self.asked).prefetch_related(*details_of(self.scope))


class FarmCowsApi(FarmRowsApi[Cow]):
    """The cows of a farm. Two of them may have one number (a collar handed on), so her id is what counts."""

    model = Cow
    read_at = "cows"
    ops = {
        "get": Op(
            Action.SEE_COWS,
            "list_farm_cows",
            "The cows of a farm",
            shows=CowShown,
            lists=True,
            orders=ORDERS,
            filters=FILTERS,
            query=ASKED,
        ),
        "post": Op(
            Action.KEEP_COWS,
            "add_cow",
            "One more cow of a farm",
            takes=CowWord,
            shows=CowShown,
            status=201,
            repeats=True,
        ),
    }

    def rows(self) -> Shape:
        return narrowed(super().rows(), self.asked).prefetch_related(*details_of(self.scope))

    def make(self, content: Said) -> Cow:
        cow = Cow(business=self.seat.business, farm=self.farm)
        marks, lactation = fill(cow, content)
        save_cow(cow=cow, identities=marks, lactation=lactation, at=self.now)
        return with_details(self.scope, cow)


class CowApi(RowApi[Cow]):
    """One cow. What happened at her feet is read under her work."""

    model = Cow
    ops = {
        "get": Op(Action.SEE_COWS, "read_cow", "One cow", shows=CowShown),
        "patch": Op(
            Action.KEEP_COWS, "change_cow", "Change a cow", takes=CowWord, shows=CowShown, changes=True
        ),
    }

    def row(self, *, is_locked: bool = False) -> Cow:
        return with_details(self.scope, super().row(is_locked=is_locked))

    def change(self, row: Cow, content: Said) -> Cow:
        marks, lactation = fill(row, content)
        save_cow(cow=row, identities=marks, lactation=lactation, at=self.now)
        return self.row()


class CalvingWord(serializers.Serializer):  # type: ignore[type-arg]
    """The day she calved, and the number of the lactation that began with it (1: first calf)."""

    calved_on = Day()
    lactation = serializers.IntegerField(
        min_value=1, max_value=HIGHEST_LACTATION, required=False, allow_null=True
    )


class CalvingApi(StepApi[Cow]):
    """A calving is noted. One within 200 days of a known one, or of the same number, puts that one right."""

    model = Cow
    ops = {
        "post": Op(
            Action.KEEP_COWS,
            "note_calving",
            "A cow has calved",
            takes=CalvingWord,
            shows=CowShown,
            repeats=True,
        )
    }

    def act(self, row: Cow, content: Said) -> Cow:
        note_calving(cow=row, calved_on=content["calved_on"], lactation=content.get("lactation"))
        return with_details(self.scope, row)

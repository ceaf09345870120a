"""A list of consumables read in, and the kit as files."""

from uuid import uuid4

from django.http import HttpResponse
from django.utils.text import slugify
from rest_framework import serializers

from farms.domain.herd_table import UnreadableHerdList, read_table
from trimops.accounts.actions import Action
from trimops.api.kinds import DoApi, FileApi
from trimops.api.op import Op, Said, Shape
from trimops.api.refusals import CannotBeMeant
from trimops.kernel.errors import NotFound
from trimops.web.file_answer import file_answer
from visits.documents.csv_file import csv_file
from visits.domain.kit.plan_kit_list import KitPlan, plan_kit_list
from visits.domain.kit.read_kit_list import UnreadableKitList, read_kit_list
from visits.selectors.kit.edge_tables import EDGE_TABLES
from visits.selectors.kit.kit_sheets import kit_sheets
from visits.selectors.kit.kit_tables import STOCK_TABLES
from visits.services.kit.read_in_kit import KitListRefused, read_in_kit
from visits.services.kit.stock_places import stock_places_of

MOST_LETTERS = 200_000
TABLES = {**STOCK_TABLES, **EDGE_TABLES}


class KitListWord(serializers.Serializer):  # type: ignore[type-arg]
    """A list as CSV: headings first, then a consumable on each line. `lines` is the whole text."""

    lines = serializers.CharField(max_length=MOST_LETTERS, trim_whitespace=False)


class KitListFault(serializers.Serializer):  # type: ignore[type-arg]
    """A line that cannot be used until it is mended."""

    line = serializers.IntegerField()
    name = serializers.CharField(allow_blank=True)
    faults = serializers.ListField(child=serializers.CharField())


class KitListTold(serializers.Serializer):  # type: ignore[type-arg]
    """What the list adds and changes, by name."""

    new = serializers.ListField(child=serializers.CharField())
    changed = serializers.ListField(child=serializers.CharField())
    refused = KitListFault(many=True)


class _KitListApi(DoApi):
    def table(self, content: Said) -> list[list[str]]:
        try:
            return read_table(content["lines"].encode())
        except UnreadableHerdList as fault:
            raise CannotBeMeant(faults=[("lines", str(fault))]) from fault


class KitListLookApi(_KitListApi):
    """What a list of consumables would add and change; nothing is done."""

    ops = {
        "post": Op(
            Action.KEEP_KIT,
            "look_at_kit_list",
            "Look at a list of consumables",
            takes=KitListWord,
            shows=KitListTold,
            repeats=True,
        )
    }

    def act(self, content: Said) -> Shape:
        places = [place.name for place in stock_places_of(self.scope)]
        try:
            found = read_kit_list(self.table(content), places)
        except UnreadableKitList as fault:
            raise KitListRefused(str(fault)) from fault
        return _told(plan_kit_list(found, kit_sheets(self.scope)))


class KitListReadApi(_KitListApi):
    """A list of consumables is read in with their first stock: all of it, or, where one line has a fault, nothing."""

    ops = {
        "post": Op(
            Action.KEEP_KIT,
            "read_in_kit_list",
            "Read a list of consumables in",
            takes=KitListWord,
            shows=KitListTold,
            repeats=True,
        )
    }

    def act(self, content: Said) -> Shape:
        business, by = self.seat.business, self.seat.user
        plan = read_in_kit(business=business, table=self.table(content), at=self.now, by=by, uid=uuid4())
        return _told(plan)


def _told(plan: KitPlan) -> dict[str, object]:
    return {
        "new": [item.sheet.name for item in plan.new],
        "changed": [item.sheet.name for item in plan.changed],
        "refused": plan.refused,
    }


class KitFileApi(FileApi):
    """A table of the kit as CSV: `consumables`, `stock`, `lots`, `ledger`, `blades`, `sharpenings` or `wash-downs`."""

    ops = {"get": Op(Action.SEE_KIT, "read_kit_file", "A table of the kit as CSV", media="text/csv")}

    def file(self) -> HttpResponse:
        table = TABLES.get(self.kwargs["what"])
        if table is None:
            raise NotFound("There is nothing at this address.")
        business = self.seat.business
        name = f"{slugify(business.name) or 'kit'}_{self.kwargs['what']}_{self.now:%Y-%m-%d}.csv"
        return file_answer(csv_file(table(business)), "text/csv; charset=utf-8", name)

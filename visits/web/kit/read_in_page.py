"""A list of consumables is looked at first; only the button reads it in."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from farms.domain.herd_table import read_table
from trimops.accounts.actions import Action
from trimops.kernel.errors import RuleBroken
from trimops.paper.figures import counted
from trimops.web.scoped_page import ScopedPage
from visits.documents.csv_file import csv_file
from visits.documents.kit.kit_csv import KitLine, consumables_table, filled_columns
from visits.domain.kit.kit_list_columns import COLUMNS, PER, STOCK_OF
from visits.domain.kit.kit_sheet import OCCASIONS
from visits.domain.kit.plan_kit_list import KitPlan, PlannedItem, plan_kit_list
from visits.domain.kit.read_kit_list import UnreadableKitList, read_kit_list
from visits.domain.kit.read_quantity import quantity_words
from visits.domain.kit.starter_list import STARTER_LIST
from visits.selectors.kit.kit_sheets import kit_sheets
from visits.services.kit.read_in_kit import read_in_kit
from visits.services.kit.stock_places import stock_places_of
from visits.web.kit.read_in_form import ReadInForm, csv_lines


class ReadInPage(ScopedPage):
    """With `?start` the form holds the list to begin with, looked at already."""

    does = Action.KEEP_KIT
    template = "visits/kit/read_in.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        if "start" not in request.GET:
            return self._page(ReadInForm())
        table = starter_table({item.sheet.name.casefold() for item in kit_sheets(self.scope)})
        if not table:
            return self._page(ReadInForm())
        return self._looked_at(ReadInForm(initial={"lines": csv_lines(table)}), table, is_start=True)

    def post(self, request: HttpRequest) -> HttpResponseBase:
        form = ReadInForm(request.POST, request.FILES)
        if not form.is_valid():
            return self._page(form, status=400)
        if request.POST.get("act") != "read":
            return self._looked_at(form, form.table)
        try:
            plan = read_in_kit(
                business=self.seat.business,
                table=form.table,
                at=self.now,
                by=self.seat.user,
                uid=form.uid_said,
            )
        except RuleBroken as fault:
            form.add_error("lines", fault.message)
            return self._looked_at(form, form.table, status=409)
        messages.success(request, _done_words(plan))
        return redirect("kit")

    def _looked_at(
        self, form: ReadInForm, table: Sequence[Sequence[str]], status: int = 200, *, is_start: bool = False
    ) -> HttpResponse:
        places = [place.name for place in stock_places_of(self.scope)]
        try:
            found = read_kit_list(table, places)
        except UnreadableKitList as fault:
            form.add_error("lines", str(fault))
            return self._page(form, status=400)
        plan = plan_kit_list(found, kit_sheets(self.scope))
        told: dict[str, object] = {"plan": plan, "passed_over": found.passed_over, "is_start": is_start}
        told["new"] = [_new_row(item) for item in plan.new]
        return self._page(form, told, status)

    def _page(
        self, form: ReadInForm, told: dict[str, object] | None = None, status: int = 200
    ) -> HttpResponse:
        own = [column.heading for column in COLUMNS]
        heads = [*own, *(PER + words for words in OCCASIONS.values()), f"{STOCK_OF}…"]
        return self.show({"form": form, "heads": heads, **(told or {})}, status=status)


def starter_table(known: Collection[str]) -> list[list[str]]:
    """The list to begin with, as if it had been handed in; what is `known` by its name in small letters is left out."""
    lines = [KitLine(sheet) for sheet in STARTER_LIST if sheet.name.casefold() not in known]
    return read_table(csv_file(filled_columns(consumables_table(lines, ())))) if lines else []


@dataclass(frozen=True)
class NewRow:
    """A new consumable as the preview shows it."""

    name: str
    kind: str
    unit: str
    uses: str
    stock: str


def _new_row(item: PlannedItem) -> NewRow:
    sheet, stock = item.sheet, item.stock
    uses = [f"{quantity_words(n, sheet.unit)} with every {OCCASIONS[use]}" for use, n in sheet.recipe.items()]
    lies = [f"{place} {quantity_words(n, sheet.unit)}" for place, n in stock.by_place.items()]
    return NewRow(sheet.full_name, sheet.kind.label, sheet.unit.label, ", ".join(uses), ", ".join(lies))


def _done_words(plan: KitPlan) -> str:
    if not (plan.new or plan.changed):
        return "The list says what is known already; nothing has changed."
    new = f"{counted(len(plan.new), 'consumable')} added" if plan.new else ""
    changed = f"{len(plan.changed)} changed" if plan.changed else ""
    return f"The list is read in: {', '.join(filter(None, (new, changed)))}."

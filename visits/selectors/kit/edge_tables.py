"""Blades, sharpenings and wash-downs as tables to take out."""

from trimops.accounts.models import Business
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.documents.data_table import DataTable
from visits.models import Blade, Sharpening, WashDown


def blades(business: Business) -> DataTable:
    """Every blade there ever was. One query."""
    rows = Blade.objects.within(Scope(business.pk)).select_related("van").order_by("pk")
    found = [
        (
            *(row.name, row.get_kind_display(), row.get_hand_display(), row.van.name if row.van else ""),
            *(row.edge_angle, row.thickness_mm, row.bought_on, row.cost, row.hours_limit),
            *(row.get_state_display(), local_day(row.state_since, business.zone)),
            *(row.get_fault_display(), row.note),
        )
        for row in rows
    ]
    headings = (
        *("Blade", "Kind", "Hand", "Van", "Edge angle, degrees", "Thickness, mm", "Bought on", "Cost"),
        *("Hours at most", "State", "Since", "Fault", "Note"),
    )
    return DataTable("blades", "Knives and discs.", headings, found)


def sharpenings(business: Business) -> DataTable:
    """Every edge that was made. One query."""
    rows = Sharpening.objects.within(Scope(business.pk)).select_related("blade__van").order_by("at", "pk")
    found = [
        (
            *(row.blade.name, row.blade.van.name if row.blade.van else ""),
            *(local_day(row.at, business.zone), row.get_method_display(), row.grit, row.angle, row.minutes),
            *(row.done_by, row.get_felt_display(), row.get_before_display(), row.cows_since_last, row.note),
        )
        for row in rows
    ]
    headings = (
        *("Blade", "Van", "Day", "Method", "Grit", "Angle, degrees", "Minutes", "By", "Felt afterwards"),
        *("Edge before", "Cows of the edge before, by hand", "Note"),
    )
    return DataTable("sharpenings", "Every edge that was made.", headings, found)


def wash_downs(business: Business) -> DataTable:
    """Every wash-down of every visit. One query."""
    rows = WashDown.objects.within(Scope(business.pk)).select_related(
        "visit__farm", "visit__van", "by", "consumable"
    )
    found = [
        (
            *(row.washed_at.astimezone(business.zone).strftime("%Y-%m-%d %H:%M"), row.visit.farm.name),
            *(row.visit.van.name if row.visit.van else "", row.substance, row.dilution, row.contact_minutes),
            *(row.litres, row.consumable.name if row.consumable else "", row.by.name),
        )
        for row in rows.order_by("washed_at", "pk")
    ]
    headings = (
        "When",
        "Farm",
        "Van",
        "Disinfectant",
        "How strong",
        "Minutes left on",
        "Litres",
        "Product",
        "By",
    )
    return DataTable("wash-downs", "Crush, knives and boots washed and disinfected.", headings, found)


EDGE_TABLES = {"blades": blades, "sharpenings": sharpenings, "wash-downs": wash_downs}
"""By the name of the file."""

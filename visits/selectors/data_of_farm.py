"""The tables of the farm itself: the place, how to work there, its people."""

from farms.models import Contact, Farm, HygieneChange, Milking
from trimops.kernel.scope import Scope
from visits.documents.data_table import Cell, DataTable, yes_no


def farm_own_tables(scope: Scope, farm: Farm) -> list[DataTable]:
    """The farm, its people, its milkings and its hygiene over time. Three queries."""
    return [_farm(farm), _people(scope, farm), _milkings(scope, farm), _hygiene(scope, farm)]


def _farm(farm: Farm) -> DataTable:
    rows: list[tuple[Cell, ...]] = [
        ("Name", farm.name),
        ("Address", farm.address),
        ("Latitude", str(farm.latitude)),
        ("Longitude", str(farm.longitude)),
        ("Email", farm.email),
        ("Phone", farm.phone),
        ("VAT number", farm.vat_number),
        ("Cows in the herd, as told", str(farm.herd_size)),
        ("Days between routine visits", str(farm.routine_interval_days)),
        ("Cows at a routine visit", str(farm.routine_cows)),
        ("Way in", farm.access_notes),
        ("Asked of whoever comes", farm.wash_rule),
        ("Crush", farm.get_crush_place_display()),
        ("Hard standing", yes_no(farm.has_hard_standing)),
        ("Water and hose", yes_no(farm.has_water)),
        ("Light", yes_no(farm.has_light)),
        ("Power", farm.get_power_display()),
        ("Shelter", farm.get_shelter_display()),
    ]
    return DataTable("farm", "The place, and how to work there.", ("What", "As noted"), rows)


def _people(scope: Scope, farm: Farm) -> DataTable:
    rows = Contact.objects.within(scope).filter(farm=farm).order_by("name", "pk")
    found = [
        (
            *(row.name, row.part, row.phone, row.email, yes_no(row.gets_reports)),
            *(row.get_told_by_display(), row.get_language_display(), yes_no(row.opted_out_at is not None)),
        )
        for row in rows
    ]
    headings = (
        *("Name", "Part", "Phone", "Email", "Gets reports by mail", "Told of visits", "Language"),
        "Wants no such messages",
    )
    return DataTable("people", "Whom to ring.", headings, found)


def _milkings(scope: Scope, farm: Farm) -> DataTable:
    rows = Milking.objects.within(scope).filter(farm=farm).order_by("weekday", "starts")
    found = [(row.get_weekday_display(), f"{row.starts:%H:%M}", row.minutes) for row in rows]
    return DataTable("milkings", "When the farm milks.", ("Weekday", "From", "Minutes"), found)


def _hygiene(scope: Scope, farm: Farm) -> DataTable:
    rows = HygieneChange.objects.within(scope).filter(farm=farm).order_by("since", "pk")
    found = [(row.since, row.get_level_display(), row.reason) for row in rows]
    return DataTable("hygiene", "Hygiene level over time.", ("Since", "Level", "Why"), found)

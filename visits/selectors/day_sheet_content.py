"""One van's day of a plan, as the values its sheet is drawn from."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime

from farms.domain.handling import CrushPlace, PowerSupply
from farms.models import Contact, Farm
from trimops.kernel.errors import NotFound
from trimops.kernel.scope import Scope
from visits.documents.day_sheet_content import DaySheet, SheetMeal, SheetStop
from visits.models import WeekPlan, WeekPlanState
from visits.selectors.day_drawings import MEANINGS
from visits.selectors.letterhead import letterhead_of
from visits.selectors.plan_rows import StopView
from visits.selectors.week_view import shifts_of_plan

MARKS = {"urgent": "urgent", "recheck": "re-check"}


def day_sheet_content(week_plan: WeekPlan, shift_id: str, now: datetime) -> DaySheet:
    """NotFound where the plan has no such shift, or its van does not go out. A fixed number of queries."""
    business = week_plan.business
    shifts = shifts_of_plan(business, week_plan, now)
    shift = next((each for each in shifts if each.id == shift_id and each.stops), None)
    if shift is None or shift.leave is None or shift.back is None:
        raise NotFound("No van goes out then.")
    numbers = numbers_of(Scope(business.pk), [stop.visit.farm for stop in shift.stops])
    meal = shift.meal
    return DaySheet(
        letterhead=letterhead_of(business),
        day=shift.day,
        van=shift.van.name,
        leave=shift.leave,
        back=shift.back,
        km=shift.km,
        stops=tuple(_stop(stop, numbers) for stop in shift.stops),
        made_at=now.astimezone(business.zone),
        meal=SheetMeal(*meal) if meal and shift.leave < meal[1] and meal[0] < shift.back else None,
        load=tuple(load_for([stop.visit.farm for stop in shift.stops])),
        is_proposed=week_plan.state == WeekPlanState.PROPOSED,
    )


def _stop(stop: StopView, numbers: Mapping[int, str]) -> SheetStop:
    visit = stop.visit
    farm = visit.farm
    return SheetStop(
        start=stop.start,
        finish=stop.finish,
        farm=farm.name,
        cows=visit.head_count,
        lame=visit.corrective_count,
        drive_minutes=stop.travel_minutes,
        drive_km=stop.km,
        hygiene=f"{farm.hygiene_level}, {farm.get_hygiene_level_display().lower()}",
        meaning=MEANINGS[stop.meaning],
        mark=MARKS.get(visit.reason, ""),
        ring=numbers.get(farm.pk, ""),
        way_in=farm.access_notes,
        note=visit.note,
    )


def numbers_of(scope: Scope, farms: Sequence[Farm]) -> dict[int, str]:
    """Farm -> the farm's own number, else that of its first contact who has one (not the vet's)."""
    contacts = Contact.objects.within(scope).filter(farm__in=[farm.pk for farm in farms]).exclude(phone="")
    found: dict[int, str] = {}
    for contact in contacts.exclude(part__icontains="vet").order_by("id"):
        found.setdefault(contact.farm_id, f"{contact.phone}, {contact.name}")
    return found | {farm.pk: farm.phone for farm in farms if farm.phone}


def load_for(farms: Sequence[Farm]) -> Iterator[str]:
    """What the farms of the day do not have themselves."""
    needs = {
        "crush": [farm for farm in farms if farm.crush_place == CrushPlace.BROUGHT],
        "power of your own": [farm for farm in farms if farm.power == PowerSupply.NONE],
        "water": [farm for farm in farms if not farm.has_water],
        "lamp": [farm for farm in farms if not farm.has_light],
        "mats (no hard standing)": [farm for farm in farms if not farm.has_hard_standing],
    }
    for thing, wanting in needs.items():
        names = list(dict.fromkeys(farm.name for farm in wanting))
        if names:
            yield (
                thing if len(names) == len({farm.pk for farm in farms}) else f"{thing} for {', '.join(names)}"
            )

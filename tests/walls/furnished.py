"""A business with one row of everything that an address can name."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from farms.models import Contact, Farm, Payer
from farms.services.keep_herd_list import keep_herd_list
from invoicing.services.draft_invoice import draft_invoice
from tests.factories import (
    MONDAY,
    NOON,
    TUESDAY_TEN,
    House,
    blocked_foot,
    finish,
    make_cow,
    make_farm,
    make_house,
    make_prices,
    photo_of,
    planned,
    put_down,
    under_way,
    wanted,
)
from tests.visits.services.offers import hold, offers
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import OutBecause, VanOut, WeekPlan
from visits.services.ask_week_plan import ask_week_plan
from visits.services.make_calendar_address import make_calendar_address
from visits.services.note_what_happened import OutWord
from visits.services.replan_week import replan_week
from visits.services.think_replan import think_replan
from visits.services.think_week_plan import think_week_plan

LIST = b"number,official tag\n101,UK123450600001\n900,UK123450700002\n"
SUNDAY_EVENING = datetime(2026, 3, 1, 19, tzinfo=UTC)


@dataclass(frozen=True)
class Furnished:
    """A house, and the keys of its rows by what they are; `other` holds those of its second farm."""

    house: House
    keys: dict[str, object]
    other: dict[str, object]
    secret: str


def furnish(name: str) -> Furnished:
    """Everything of a business, on two farms; farm clients are let in to the first alone."""
    house = make_house(name)
    make_prices(house.business)
    keys = _rows_of(house, house.farm, house.cow)
    second = make_farm(house.business, "High Croft", by=house.owner)
    other = _rows_of(house, second, make_cow(second, "505"), days=7)
    wanted(house.farm)
    again = _planned_again(house)
    plan = ask_week_plan(business=house.business, monday=MONDAY, at=SUNDAY_EVENING, by=house.owner)
    think_week_plan(week_plan=plan, limits=SolveLimits(iterations=10), at=SUNDAY_EVENING)
    made = make_calendar_address(business=house.business, name="Phone", at=NOON, by=house.owner)
    keys |= {
        "week_plan": plan.pk,
        "plan_shift": plan.plan["shifts"][0]["id"],
        "replan": again.pk,
        "van_out": VanOut.objects.within(house.scope).get().pk,
        "calendar_address": made.row.pk,
        "held": hold(house, offers(house.farm, weeks=3).fits[-1]).pk,
        "van": house.van.pk,
        "payer": Payer.objects.create(business=house.business, name="The Estate").pk,
        "contact": Contact.objects.create(
            business=house.business, farm=house.farm, name="H. Manager", part="Herd manager"
        ).pk,
        "membership": next(m.pk for m in house.memberships.values() if m.user == house.office),
    }
    return Furnished(house, keys, other, made.secret)


def _planned_again(house: House) -> WeekPlan:
    """A plan made anew, for a van that is out of action on a day on which it stays in anyway."""
    sunday = SUNDAY_EVENING + timedelta(days=7)
    out = OutWord(house.van, OutBecause.CRUSH, sunday, sunday + timedelta(hours=2))
    plan = replan_week(
        business=house.business, monday=MONDAY, happening=out, at=SUNDAY_EVENING, by=house.owner
    )
    return think_replan(week_plan=plan, limits=SolveLimits(iterations=10), at=SUNDAY_EVENING)


def _rows_of(house: House, farm: Farm, cow: object, days: int = 0) -> dict[str, object]:
    start = TUESDAY_TEN + timedelta(days=days)
    done = under_way(farm, house.van, start - timedelta(days=1))
    photo = photo_of(put_down(done, cow, blocked_foot()))
    finish(done, house.trimmer)
    herd = keep_herd_list(farm=farm, file_name="herd.csv", content=LIST, at=NOON, by=house.office)
    return {
        "farm": farm.pk,
        "cow": cow.pk,
        "herd_import": herd.pk,
        "planned": planned(farm, house.van, start).pk,
        "finished": done.pk,
        "under_way": under_way(farm, house.van, start + timedelta(hours=5)).pk,
        "photo": photo.uid,
        "invoice": draft_invoice(visit=done, at=NOON).pk,
    }

"""A farm and a visit to it today, to test the crush page with. All of it made up; the numbers are our own."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from decimal import Decimal

from farms.models import Cow, Farm
from tests.factories import (
    House,
    blocked_foot,
    finish,
    make_blade,
    make_consumable,
    make_cow,
    make_farm,
    make_house,
    make_kit,
    make_prices,
    make_wish,
    named,
    put_down,
    stock_up,
)
from visits.domain.kit.stock_kinds import ConsumableKind, UsePer
from visits.domain.kit.use_rules import Recipe
from visits.domain.mobility import MobilityScale
from visits.models import Consumable, Visit
from visits.services.ask_visit import CowWish, ask_visit
from visits.services.plan_visit import plan_visit
from visits.services.start_visit import start_visit

HERD = [str(number) for number in range(201, 321)]
BLOCKED = ("214", "236", "258")  # a wooden block on the inner claw of the left hind, due to be looked at
LAME = {"203": 3, "227": 2, "249": 2}  # as the farm scored them
LATE = "231"  # calves in a fortnight
ASKED = [number for number in HERD[:40] if number not in BLOCKED]
BLOCK_DAYS_AGO = 24  # within the 21 to 28 days of a wooden block
KNIVES: dict[str, dict[str, str]] = {
    "Blue handle": {},
    "Red handle": {},
    "Left handle": {"hand": "left"},
    "Grey disc": {"kind": "grinder_disc", "hand": "either"},
}
IN_VAN = {"wood": 60, "glue": 3000, "wrap": 80, "dressing": 40}


@dataclass(frozen=True)
class Yard:
    """The business, today's visit (planned, not begun), its herd by number and the kit by kind."""

    house: House
    visit: Visit
    cows: dict[str, Cow]
    kit: dict[str, Consumable]

    @property
    def path(self) -> str:
        return f"/visits/{self.visit.pk}/crush/"


def make_yard(more: int = 0) -> Yard:
    """A herd of 120 (and so many `more`) with 37 cows asked for, three blocks from before, and kit in the van."""
    now = datetime.now(UTC).replace(microsecond=0)
    house = make_house()
    make_prices(house.business)
    farm = _furnished(house.farm)
    Cow.objects.within(house.scope).filter(pk=house.cow.pk).delete()
    cows = {number: make_cow(farm, number) for number in HERD}
    for number in range(1001, 1001 + more):
        make_cow(farm, str(number))
    cows[LATE].calving_due = now.date() + timedelta(days=14)
    cows[LATE].save()
    kit = _kit(house, now)
    for name, fields in KNIVES.items():
        make_blade(house.van, name, **fields)
    _blocks_before(house, cows, now - timedelta(days=BLOCK_DAYS_AGO))
    wish = make_wish(
        asked_by="The herd manager",
        due_from=now.date(),
        due_until=now.date(),
        head_count=60,
        cows=tuple(_wished(cows, number) for number in ASKED),
    )
    visit = ask_visit(farm=farm, wish=wish, at=now - timedelta(days=2), by=house.office)
    start = now - timedelta(minutes=5)
    visit = plan_visit(visit=visit, van=house.van, start=start, at=now - timedelta(days=1), by=house.office)
    return Yard(house, visit, cows, kit)


def small_visit(yard: Yard) -> Visit:
    """One more visit today: a farm with one cow, and nobody named which."""
    farm = make_farm(yard.house.business, "High Fold", by=yard.house.office)
    make_cow(farm, "11")
    day = yard.visit.due_from
    wish = make_wish(due_from=day, due_until=day, head_count=1)
    at = yard.visit.planned_start
    visit = ask_visit(farm=farm, wish=wish, at=at, by=yard.house.office)
    hours = yard.visit.planned_finish + timedelta(minutes=30)
    return plan_visit(visit=visit, van=yard.house.van, start=hours, at=at, by=yard.house.office)


def begun(yard: Yard) -> Yard:
    """The same with the visit under way since five minutes."""
    at = yard.visit.planned_start
    visit = start_visit(visit=yard.visit, checked=True, at=at, by=yard.house.trimmer)
    return Yard(yard.house, visit, yard.cows, yard.kit)


def _furnished(farm: Farm) -> Farm:
    farm.access_notes = "Second gate after the bridge; the dog is tied.\nCrush stands in the old parlour."
    farm.save()
    return farm


def _wished(cows: dict[str, Cow], number: str) -> CowWish:
    if number in LAME:
        return CowWish(cows[number], "Lame behind", MobilityScale.UK, LAME[number])
    return named(cows[number], "Long claws" if int(number) % 3 else "Before drying off")


def _kit(house: House, now: datetime) -> dict[str, Consumable]:
    kit = make_kit(house.business)
    one = Recipe(UsePer.DRESSING, Decimal(1))
    kit["dressing"] = make_consumable(house.business, "Dressing", ConsumableKind.DRESSING, one)
    for name, item in kit.items():
        stock_up(item, IN_VAN[name], at=now - timedelta(days=40), van=house.van)
    return kit


def _blocks_before(house: House, cows: dict[str, Cow], at: datetime) -> None:
    wish = make_wish(due_from=at.date(), due_until=at.date())
    visit = ask_visit(farm=house.farm, wish=wish, at=at - timedelta(days=3), by=house.office)
    visit = plan_visit(visit=visit, van=house.van, start=at, at=at - timedelta(days=2), by=house.office)
    visit = start_visit(visit=visit, checked=True, at=at, by=house.trimmer)
    for number in BLOCKED:
        put_down(visit, cows[number], blocked_foot())
    finish(visit, house.trimmer)

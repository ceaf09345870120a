"""A small day at the crush, to test the list of the day, the keypad and what is told. All made up."""

from dataclasses import dataclass
from datetime import UTC, datetime

from django.db.models import QuerySet

from farms.domain.identity_kind import IdentityKind
from farms.models import Cow
from tests.factories import House, make_blade, make_cow, make_house, make_kit, make_wish, named
from visits.domain.mobility import MobilityScale
from visits.models import BladeSaid, Trim, TrimmedFoot, Visit
from visits.services.ask_visit import CowWish, ask_visit
from visits.services.plan_visit import plan_visit
from visits.services.start_visit import start_visit

TAG = "UK123450600001"  # fits its check digit (fixtures/standards/tag_check_digits.json)
KNIVES = ("Blue handle", "Red handle")
LISTED = ("211", "212", "213", "214")


@dataclass(frozen=True)
class QueueDay:
    house: House
    visit: Visit
    cows: dict[str, Cow]


def make_queue_day() -> QueueDay:
    """Under way: cow 211 is lame, three more are asked for; 217 is worn by two cows, one has an official tag."""
    now = datetime.now(UTC).replace(microsecond=0)
    house = make_house()
    make_kit(house.business)
    for name in KNIVES:
        make_blade(house.van, name)
    make_blade(house.van, "Grey disc", kind="grinder_disc", hand="either")
    Cow.objects.within(house.scope).filter(pk=house.cow.pk).delete()
    cows = {number: make_cow(house.farm, number) for number in (*LISTED, "215", "217", "A12", "31")}
    make_cow(house.farm, "217", {IdentityKind.OFFICIAL_TAG: TAG}, note="White face")
    lame = CowWish(cows["211"], "Walks badly", MobilityScale.UK, 3)
    wishes = (lame, *(named(cows[number], "Long claws") for number in LISTED[1:]))
    wish = make_wish(due_from=now.date(), due_until=now.date(), head_count=6, cows=wishes)
    visit = ask_visit(farm=house.farm, wish=wish, at=now, by=house.office)
    visit = plan_visit(visit=visit, van=house.van, start=now, at=now, by=house.office)
    return QueueDay(house, start_visit(visit=visit, checked=True, at=now, by=house.trimmer), cows)


def worn_today(day: QueueDay) -> list[str]:
    """The numbers of the cows that the office has as trimmed, in order."""
    return sorted(trim.cow.number for trim in _trims(day).select_related("cow"))


def feet_lifted(day: QueueDay) -> int:
    """Of all cows that the office has as trimmed."""
    return TrimmedFoot.objects.within(day.house.scope).filter(trim__in=_trims(day)).count()


def blades_said(day: QueueDay) -> list[tuple[str, str]]:
    """Turn by turn, which blade and what is said of it."""
    rows = BladeSaid.objects.within(day.house.scope).order_by("turn__at", "blade__name", "part")
    return list(rows.values_list("blade__name", "part"))


def _trims(day: QueueDay) -> QuerySet[Trim]:
    return Trim.objects.within(day.house.scope).filter(visit=day.visit, taken_back_at=None)

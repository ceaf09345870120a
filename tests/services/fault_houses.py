"""Small businesses on three continents, each with work that falls due of itself."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from farms.models import Contact, Farm
from tests.factories import (
    House,
    blocked_foot,
    finish,
    make_cow,
    make_farm,
    make_house,
    make_prices,
    put_down,
    trimmed_foot,
    under_way,
    wanted,
)
from trimops.accounts.models import Business
from trimops.kernel.clock import local_day
from visits.models import Visit

ZONES = ("Europe/London", "America/New_York", "Australia/Lord_Howe", "Africa/Casablanca", "Pacific/Auckland")
OLD_DAYS = 40
"""Ago is the visit whose block must come off by now."""


@dataclass(frozen=True)
class FaultHouse:
    """A business, the visit that was finished weeks ago and the one that is under way."""

    house: House
    old: Visit
    today: Visit

    @property
    def visits(self) -> list[int]:
        return [self.old.pk, self.today.pk]


def build_house(number: int, now: datetime) -> FaultHouse:
    """Three farms: one with a block due off, one where the van stands now, one that wants a routine visit."""
    house = make_house(f"Trial Trimming {number}")
    zone = ZONES[number % len(ZONES)]
    # Opened days ago, or its first night would be the next one.
    Business.objects.filter(pk=house.business.pk).update(
        timezone=zone,
        created_at=now - timedelta(days=3),
        email=f"office-{number}@trimming.example",
        proposes_weeks=True,
    )
    house.business.timezone = zone
    make_prices(house.business)
    first = _with_addresses(house.farm, number, "a")
    second = _with_addresses(make_farm(house.business, "Mill Bank", by=house.owner), number, "b")
    third = _with_addresses(make_farm(house.business, "Top End", by=house.owner), number, "c")
    old = _worked(house, first, house.cow, now - timedelta(days=OLD_DAYS), blocked_foot())
    today = _worked(house, second, make_cow(second, "7"), now - timedelta(hours=3), trimmed_foot())
    day = local_day(now, ZoneInfo(zone))
    wanted(third, due_from=day, due_until=day + timedelta(days=12))
    return FaultHouse(house, finish(old, house.trimmer), today)


def _with_addresses(farm: Farm, number: int, letter: str) -> Farm:
    farm.email = f"money-{number}{letter}@herds.example"
    farm.save(update_fields=["email"])
    Contact.objects.create(
        business_id=farm.business_id,
        farm=farm,
        name="The herd manager",
        part="Herd manager",
        email=f"herd-{number}{letter}@herds.example",
        gets_reports=True,
    )
    return farm


def _worked(house: House, farm: Farm, cow: object, start: datetime, foot: object) -> Visit:
    day = start.date()
    visit = under_way(farm, house.van, start, due_from=day, due_until=day + timedelta(days=7))
    put_down(visit, cow, foot)
    return visit

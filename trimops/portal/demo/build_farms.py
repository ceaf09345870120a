"""The demo's farms with their milkings, contacts and hygiene, and the client who may see the first of them."""

from collections.abc import Iterator
from datetime import date, datetime, time
from random import Random

from farms.models import Contact, Farm, FarmAccess, HygieneChange, Milking
from trimops.portal.demo.build_people import Crew, place_of
from trimops.portal.demo.demo_files import FarmSketch
from trimops.portal.demo.demo_people import Cast

MILKINGS = {
    "two": ((time(5, 30), 60), (time(15, 30), 60)),
    "three": ((time(5, 0), 75), (time(13, 0), 75), (time(20, 30), 75)),
    "robot": (),
}
ACCESS_NOTES = (
    "Second gate on the left; close it again. Turn round behind the silage clamp.",
    "Ring ten minutes before: the yard dog is loose until milking is cleared up.",
    "Trailer to the collecting yard, water point by the dairy door.",
    "Steep lane: not with the trailer when it is icy, use the lower track.",
    "",
)
# By hygiene level: what such a farm asks of whoever brings a crush.
WASH_RULES = {
    0: "Crush and boots clean before the gate; our own tub stands at the dairy door.",
    3: "Wash and disinfect at the gate, in and out; nothing leaves the yard dirty.",
}


def build_farms(crew: Crew, cast: Cast, sketches: list[FarmSketch], since: datetime) -> list[Farm]:
    """The farms in the order of the sketches."""
    chance = Random(len(sketches))
    farms = Farm.objects.bulk_create([_farm(crew, cast, sketch, chance, since) for sketch in sketches])
    Milking.objects.bulk_create(
        [row for farm, s in zip(farms, sketches, strict=True) for row in _milkings(farm, s)]
    )
    Contact.objects.bulk_create(
        [row for number, farm in enumerate(farms) for row in _contacts(farm, cast, number)]
    )
    HygieneChange.objects.bulk_create([_hygiene(farm, crew, since) for farm in farms])
    FarmAccess.objects.bulk_create([_access(crew, farm) for farm in _of_the_client(farms, sketches)])
    return farms


def _of_the_client(farms: list[Farm], sketches: list[FarmSketch]) -> list[Farm]:
    """The first farm, and the first whose whole herd is seen: there its figures have something to say."""
    whole = [farm for farm, sketch in zip(farms, sketches, strict=True) if sketch.whole_herd]
    return list(dict.fromkeys([farms[0], *whole[:1]]))


def _access(crew: Crew, farm: Farm) -> FarmAccess:
    """With every right, so that the demo shows every page."""
    access = FarmAccess(business=crew.business, membership=crew.memberships["farm"], farm=farm)
    access.sees_money = access.hands_over = True
    return access


def _farm(crew: Crew, cast: Cast, sketch: FarmSketch, chance: Random, since: datetime) -> Farm:
    latitude, longitude = place_of(cast, sketch.east_km, sketch.north_km)
    slug = sketch.name.lower().replace(" ", "-")
    return Farm(
        business=crew.business,
        name=sketch.name,
        address="Quennerdale (an invented valley)",
        latitude=latitude,
        longitude=longitude,
        access_notes=chance.choice(ACCESS_NOTES),
        email=f"yard@{slug}.example",
        phone=f"+44 1632 960{chance.randrange(200, 999)}",
        herd_size=sketch.herd,
        routine_interval_days=sketch.interval_days,
        routine_cows=sketch.routine_cows,
        crush_place=sketch.crush,
        has_hard_standing=sketch.hard_standing,
        has_water=sketch.water,
        has_light=sketch.light,
        power=sketch.power,
        shelter=sketch.shelter,
        hygiene_level=sketch.hygiene,
        hygiene_reason=sketch.hygiene_reason,
        wash_rule=WASH_RULES.get(sketch.hygiene, ""),
        hygiene_since=_day(since),
    )


def _milkings(farm: Farm, sketch: FarmSketch) -> Iterator[Milking]:
    for weekday in range(7):
        for starts, minutes in MILKINGS[sketch.milking]:
            yield Milking(
                business_id=farm.business_id, farm=farm, weekday=weekday, starts=starts, minutes=minutes
            )


def _contacts(farm: Farm, cast: Cast, number: int) -> Iterator[Contact]:
    name = cast.contact_names[number % len(cast.contact_names)]
    host = farm.email.partition("@")[2]
    yield Contact(
        business_id=farm.business_id,
        farm=farm,
        name=name,
        part="Herd manager",
        phone=farm.phone,
        email=f"herd@{host}",
        gets_reports=True,
    )
    yield Contact(
        business_id=farm.business_id,
        farm=farm,
        name=cast.vet,
        part="Vet",
        phone="+44 1632 960110",
        email="vet@farrant-vets.example",
    )


def _hygiene(farm: Farm, crew: Crew, since: datetime) -> HygieneChange:
    return HygieneChange(
        business=crew.business,
        farm=farm,
        level=farm.hygiene_level,
        reason=farm.hygiene_reason or "as first told",
        since=_day(since),
        changed_at=since,
        changed_by=crew.people["owner"],
    )


def _day(at: datetime) -> date:
    return at.date()

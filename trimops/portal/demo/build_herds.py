"""The cows of the demo's farms: number, tag, and where each is in her life."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from random import Random

from farms.domain.cow_status import CowStatus
from farms.domain.ear_tag import uk_check_digit
from farms.domain.identity_kind import IdentityKind
from farms.models import Calving, Cow, CowIdentity, Farm
from trimops.portal.demo.past import Past

FIRST_HERD_MARK = 990_001
CALVING_INTERVAL, DRY_DAYS, BATCH = 390, 56, 900
AGE_AT_FIRST_CALF = 740
COWS_PER_HEIFER = 12
CALVINGS_TOLD = 3


@dataclass(frozen=True)
class Lifetime:
    """When she was there: since `came` (None: before the history began) until `left` (None: she still is)."""

    came: date | None = None
    left: date | None = None


def build_herds(farms: list[Farm], past: Past, first: date, today: date, chance: Random) -> list[list[Cow]]:
    """The cows of each farm in the order in which the history numbers them, then heifers that have not calved."""
    herds: list[list[Cow]] = []
    calvings: list[Calving] = []
    for number, farm in enumerate(farms):
        lives = [
            Lifetime(past.came.get((number, cow)), past.left.get((number, cow)))
            for cow in range(past.herds[number])
        ]
        heifers = farm.herd_size // COWS_PER_HEIFER
        names = iter(_numbers(len(lives) + heifers, chance))
        made = [_cow(farm, next(names), life, first, today, chance) for life in lives]
        herds.append([*(cow for cow, _ in made), *(_heifer(farm, name, today, chance) for name in names)])
        calvings.extend(row for _, rows in made for row in rows)
    Cow.objects.bulk_create([cow for herd in herds for cow in herd], batch_size=BATCH)
    Calving.objects.bulk_create(calvings, batch_size=BATCH)
    identities = [row for mark, herd in enumerate(herds, FIRST_HERD_MARK) for row in _identities(mark, herd)]
    CowIdentity.objects.bulk_create(identities, batch_size=BATCH)
    return herds


def _numbers(cows: int, chance: Random) -> list[int]:
    """Numbers with gaps where cows have left."""
    return chance.sample(range(1, max(99, int(cows * 1.4)) + 1), cows)


def _heifer(farm: Farm, number: int, today: date, chance: Random) -> Cow:
    cow = Cow(business_id=farm.business_id, farm=farm, number=str(number), status=CowStatus.HEIFER.value)
    cow.calving_due = today + timedelta(days=1 + chance.randrange(240))
    cow.born_on = cow.calving_due - timedelta(days=chance.randrange(690, 820))
    return cow


def _cow(
    farm: Farm, number: int, life: Lifetime, first: date, today: date, chance: Random
) -> tuple[Cow, list[Calving]]:
    """Where she is in her year follows from a random day of a calving interval, on the day of today or her last."""
    cow = Cow(business_id=farm.business_id, farm=farm, number=str(number), entered_on=life.came or first)
    at = life.left or today
    days, lactation = _last_calving(life, first, at, chance)
    calved_on = at - timedelta(days=days)
    cow.calved_on = calved_on
    cow.born_on = calved_on - timedelta(days=AGE_AT_FIRST_CALF + (lactation - 1) * CALVING_INTERVAL)
    if life.left:
        cow.left_on = life.left
        cow.status = chance.choice((CowStatus.SOLD, CowStatus.SOLD, CowStatus.SOLD, CowStatus.DEAD)).value
    else:
        cow.calving_due = calved_on + timedelta(days=CALVING_INTERVAL)
        cow.dry_off_due = cow.calving_due - timedelta(days=DRY_DAYS)
        cow.status = CowStatus.DRY.value if cow.dry_off_due <= today else CowStatus.MILKING.value
    told = range(max(1, lactation - CALVINGS_TOLD + 1), lactation + 1)
    return cow, [_calving(cow, calved_on, lactation, count) for count in told]


def _last_calving(life: Lifetime, first: date, at: date, chance: Random) -> tuple[int, int]:
    """Days since it, and which it was. A cow of the history's first day had calved by then; a heifer came calving."""
    if life.came:
        stay = (at - life.came).days
        return stay % CALVING_INTERVAL, 1 + stay // CALVING_INTERVAL
    days = chance.randrange(CALVING_INTERVAL)
    since_first = max(0, (at - first).days - days)
    return days, -(-since_first // CALVING_INTERVAL) + 1 + chance.randrange(5)


def _calving(cow: Cow, calved_on: date, last: int, count: int) -> Calving:
    day = calved_on - timedelta(days=(last - count) * CALVING_INTERVAL)
    return Calving(business_id=cow.business_id, cow=cow, calved_on=day, lactation=count)


def _identities(mark: int, herd: list[Cow]) -> Iterator[CowIdentity]:
    for cow in herd:
        animal = 10_000 + int(cow.number)
        tag = f"UK{mark}{uk_check_digit(mark, animal)}{animal}"
        yield CowIdentity(
            business_id=cow.business_id, cow=cow, kind=IdentityKind.OFFICIAL_TAG.value, value=tag
        )

"""The cows of the demo's farms: number, tag, and where each is in her year."""

from collections.abc import Iterator
from datetime import date, timedelta
from random import Random

from farms.domain.cow_status import CowStatus
from farms.domain.ear_tag import uk_check_digit
from farms.domain.identity_kind import IdentityKind
from farms.models import Cow, CowIdentity, Farm

FIRST_HERD_MARK = 990_001
CALVING_INTERVAL, DRY_DAYS, BATCH = 390, 56, 900


def build_herds(farms: list[Farm], today: date, chance: Random) -> list[list[Cow]]:
    """The cows of each farm, in the order in which the history numbers them."""
    herds = [[_cow(farm, number, today, chance) for number in _numbers(farm, chance)] for farm in farms]
    Cow.objects.bulk_create([cow for herd in herds for cow in herd], batch_size=BATCH)
    identities = [row for mark, herd in enumerate(herds, FIRST_HERD_MARK) for row in _identities(mark, herd)]
    CowIdentity.objects.bulk_create(identities, batch_size=BATCH)
    return herds


def _numbers(farm: Farm, chance: Random) -> list[int]:
    """Numbers grow with age, with gaps where cows have left."""
    top = max(99, int(farm.herd_size * 1.6))
    return chance.sample(range(1, top + 1), farm.herd_size)


def _cow(farm: Farm, number: int, today: date, chance: Random) -> Cow:
    """Where she is in her year follows from a random day of a calving interval; one in twelve is a heifer."""
    cow = Cow(business_id=farm.business_id, farm=farm, number=str(number))
    since = chance.randrange(CALVING_INTERVAL)
    cow.calving_due = today + timedelta(days=CALVING_INTERVAL - since)
    if chance.random() < 1 / 12:
        cow.status = CowStatus.HEIFER.value
        cow.born_on = cow.calving_due - timedelta(days=chance.randrange(690, 820))
        return cow
    cow.calved_on = today - timedelta(days=since)
    cow.born_on = cow.calved_on - timedelta(days=740 + chance.randrange(6) * CALVING_INTERVAL)
    cow.dry_off_due = cow.calving_due - timedelta(days=DRY_DAYS)
    cow.status = CowStatus.DRY.value if cow.dry_off_due <= today else CowStatus.MILKING.value
    return cow


def _identities(mark: int, herd: list[Cow]) -> Iterator[CowIdentity]:
    for cow in herd:
        animal = 10_000 + int(cow.number)
        tag = f"UK{mark}{uk_check_digit(mark, animal)}{animal}"
        yield CowIdentity(
            business_id=cow.business_id, cow=cow, kind=IdentityKind.OFFICIAL_TAG.value, value=tag
        )

"""Many small businesses: one is made through the services, the others are copies of its rows.

Each has three farms with a routine interval, a cow on each, one finished visit to the first farm, and from it a
re-check that is open and due.
"""

from collections.abc import Sequence
from datetime import UTC, datetime
from uuid import uuid4

from farms.models import Cow, Farm, Milking
from tests.bench.invoicing.finished_visits import copy_of
from tests.factories import House, make_cow, make_farm, make_house
from tests.invoicing.drafts import visit
from trimops.accounts.models import Business
from trimops.tenancy.models import TenantModel
from trimops.tenancy.unscoped import unscoped
from visits.models import Recheck, ShiftPattern, Trim, Van, Visit

OPENED = datetime(2026, 1, 1, tzinfo=UTC)
FARMS = 3
AT_ONCE = 500


def many_businesses(count: int) -> list[int]:
    """Their keys. What the pattern's own visit left wanted is taken away, so that all have the same to do."""
    house = _pattern()
    made = [
        Business(name=f"Foot Trimming {n}", timezone="Europe/London", address="1 Made-up Lane")
        for n in range(1, count)
    ]
    Business.objects.bulk_create(made, AT_ONCE)
    Business.objects.update(created_at=OPENED)
    with unscoped("rows of many businesses are made at once"):
        _copy_rows(house, made)
    return [house.business.pk, *(business.pk for business in made)]


def _pattern() -> House:
    house = make_house()
    farms = [house.farm, *(make_farm(house.business, f"Farm {n}", by=house.owner) for n in range(1, FARMS))]
    for farm in farms[1:]:
        make_cow(farm, "101")
    visit(house)
    rows = Visit.objects.within(house.scope).exclude(state="finished")
    Recheck.objects.within(house.scope).update(visit=None)
    rows.delete()
    return house


def _copy_rows(house: House, made: Sequence[Business]) -> None:
    vans = _copied(Van, [house.van], made)
    farms = _copied(Farm, list(Farm.objects.filter(business=house.business).order_by("pk")), made)
    cows = _copied(Cow, list(Cow.objects.filter(business=house.business).order_by("pk")), made, farm=farms)
    _copied(Milking, list(Milking.objects.filter(business=house.business)), made, farm=farms)
    _copied(ShiftPattern, list(ShiftPattern.objects.filter(business=house.business)), made, van=vans)
    done = list(Visit.objects.filter(business=house.business))
    visits = _copied(Visit, done, made, uids=("uid",), farm=farms, van=vans)
    pattern = list(Trim.objects.filter(business=house.business))
    trims = _copied(Trim, pattern, made, uids=("client_id",), visit=visits, cow=cows)
    rechecks = list(Recheck.objects.filter(business=house.business))
    _copied(Recheck, rechecks, made, farm=farms, cow=cows, from_trim=trims)


Copies = dict[tuple[int, int], TenantModel]
"""(business, key of the pattern's row) -> the copy."""


def _copied(
    model: type, pattern: list, made: Sequence[Business], uids: Sequence[str] = (), **links: Copies
) -> Copies:
    """A copy of each row for each business, linked to the copies of what the pattern's row is linked to."""
    keys, rows = [], []
    for business in made:
        for row in pattern:
            linked = {name: copies[business.pk, getattr(row, f"{name}_id")] for name, copies in links.items()}
            fresh = {name: uuid4() for name in uids}
            keys.append((business.pk, row.pk))
            rows.append(copy_of(row, business=business, **linked, **fresh))
    return dict(zip(keys, model.objects.bulk_create(rows, AT_ONCE), strict=True))

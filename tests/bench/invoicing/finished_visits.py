"""Many finished visits ready to be billed: one is made through the services, the others are copies of its rows.

Copies, because a visit through all its services takes some tenth of a second and a thousand of them two minutes.
"""

from datetime import timedelta
from uuid import uuid4

from tests.factories import House, make_cow, make_farm, make_house, make_prices
from tests.invoicing.drafts import visit
from trimops.tenancy.models import TenantModel
from visits.models import ClawAction, Trim, TrimmedFoot, Visit

FARMS = 4
LINES_A_BILL = 3
"""Call-out, corrective trim, block."""


def finished_visits(count: int) -> tuple[House, list[int]]:
    """A business with prices, and the keys of `count` visits on four farms in turn, all of one Tuesday."""
    house = make_house()
    make_prices(house.business)
    pattern = visit(house)
    farms = [house.farm, *(make_farm(house.business, f"Farm {n}", by=house.owner) for n in range(1, FARMS))]
    cows = [house.cow, *(make_cow(farm, "101") for farm in farms[1:])]
    made = [
        copy_of(
            pattern,
            uid=uuid4(),
            farm=farms[n % FARMS],
            planned_start=pattern.planned_start - timedelta(seconds=n),
            started_at=pattern.started_at - timedelta(seconds=n),
            finished_at=pattern.finished_at - timedelta(seconds=n),
        )
        for n in range(1, count)
    ]
    visits = [pattern, *Visit.objects.bulk_create(made)]
    _copy_work(house, visits, cows)
    return house, [row.pk for row in visits]


def copy_of(row: TenantModel, **changes: object) -> TenantModel:
    """The row without its key, with other values in some columns; not stored."""
    values = {field.attname: getattr(row, field.attname) for field in row._meta.concrete_fields}
    values.pop("id")
    for name in changes:
        values.pop(row._meta.get_field(name).attname)
    return type(row)(**values, **changes)


def _copy_work(house: House, visits: list[Visit], cows: list) -> None:
    trim = Trim.objects.within(house.scope).get()
    trims = Trim.objects.bulk_create(
        copy_of(trim, visit=row, cow=cows[n % FARMS], client_id=uuid4(), recorded_at=row.started_at)
        for n, row in enumerate(visits)
        if row.pk != trim.visit_id
    )
    foot = TrimmedFoot.objects.within(house.scope).get()
    feet = TrimmedFoot.objects.bulk_create(copy_of(foot, trim=made) for made in trims)
    actions = list(ClawAction.objects.within(house.scope))
    ClawAction.objects.bulk_create(copy_of(action, trimmed_foot=made) for made in feet for action in actions)

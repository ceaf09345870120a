"""A farm is erased: the mileage log keeps its miles, which are the business's books, and loses name and place."""

from collections.abc import Iterator, Sequence
from datetime import date, datetime
from itertools import groupby

from django.db import transaction

from farms.models import Farm
from invoicing.models import Journey
from invoicing.selectors.day_drives import van_days
from invoicing.services.keep_day_journeys import keep_day_journeys
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.domain.blot_farm import ERASED, Blot, without_name
from visits.models import Van
from visits.selectors.length_history import finished_visits

SAID_NO_MORE = "Mended; why is erased with the farm"
TEXTS = ("from_words", "to_words", "purpose", "mended_because")


@transaction.atomic
def forget_journeys(*, farm: Farm, at: datetime) -> dict[str, int]:
    """How many drives lost a word. Call it while the farm has its name, and its visits are there.

    Days that are over and not in the log yet are put into it first: without the farm's place, nobody could reckon them.
    """
    scope = Scope(farm.business_id)
    for van, day in _days_over(scope, farm, at):
        keep_day_journeys(van=van, day=day, at=at)
    of_its_days = _of_its_days(scope, farm)
    rows = {row.pk: row for row in [*_named(scope, farm), *of_its_days]}
    before = {key: _texts(row) for key, row in rows.items()}
    _blot_by_visit(of_its_days, farm)
    blot = Blot("", (farm.name,), (0, 0))
    for row in rows.values():
        for column in TEXTS:
            setattr(row, column, without_name(getattr(row, column), blot))
    changed = [row for key, row in rows.items() if _texts(row) != before[key]]
    for row in changed:
        row.save(update_fields=TEXTS)
    return {"names in the mileage log": len(changed)} if changed else {}


def _days_over(scope: Scope, farm: Farm, at: datetime) -> list[tuple[Van, date]]:
    today = local_day(at, farm.business.zone)
    return [(van, day) for van, day in van_days(finished_visits(scope).filter(farm=farm)) if day < today]


def _named(scope: Scope, farm: Farm) -> Iterator[Journey]:
    """Drives in whose words the farm's name stands, put in by hand too."""
    for column in TEXTS:
        yield from Journey.objects.within(scope).filter(**{f"{column}__icontains": farm.name})


def _of_its_days(scope: Scope, farm: Farm) -> list[Journey]:
    """The drives kept for the van days on which the farm was visited, each day's in order."""
    visited = Journey.objects.within(scope).filter(visit__farm=farm)
    days = set(visited.order_by().values_list("van_id", "on").distinct())
    rows = Journey.objects.within(scope).filter(is_by_hand=False, on__in={day for _, day in days})
    ordered = rows.select_related("visit").order_by("van_id", "on", "position", "pk")
    return [row for row in ordered if (row.van_id, row.on) in days]


def _blot_by_visit(drives: Sequence[Journey], farm: Farm) -> None:
    """Both ends of what was driven to the farm and from it, whatever the farm was called when it was kept."""
    for _, day in groupby(drives, key=lambda row: (row.van_id, row.on)):
        last: Journey | None = None
        for row in day:
            goes_home = last is not None and last.visit_id == row.visit_id
            comes_from = last is not None and _was_at(last, farm)
            if comes_from:
                row.from_words = ERASED
            if _was_at(row, farm) and not goes_home:
                row.to_words = ERASED
            if row.mended_because and (comes_from or _was_at(row, farm)):
                row.mended_because = SAID_NO_MORE
            last = row


def _was_at(row: Journey, farm: Farm) -> bool:
    """Whether the drive's visit was the farm's. The drive home bears the last visit once more."""
    return row.visit is not None and row.visit.farm_id == farm.pk


def _texts(row: Journey) -> list[str]:
    return [getattr(row, column) for column in TEXTS]

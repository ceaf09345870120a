"""A cow that the phone did not know is put on the farm's list, once, however often her number is sent."""

from uuid import UUID

from farms.models import Cow
from farms.services.save_cow import save_cow
from visits.domain.writing_content import NewCow
from visits.models import AddedCow, Visit


def add_crush_cow(*, visit: Visit, new: NewCow) -> int:
    """The key of the cow that `new` means on the farm of the locked `visit`.

    The cow added under that id before; else the one cow there with just that number, unless the trimmer said it is
    another; else a new one.
    """
    known = AddedCow.objects.within(visit.scope).filter(uid=new.uid).first()
    if known is not None:
        return known.cow_id
    cow = None if new.is_another else _only_one(visit, new.number)
    if cow is None:
        cow = save_cow(cow=Cow(business_id=visit.business_id, farm_id=visit.farm_id, number=new.number))
    AddedCow.objects.create(business_id=visit.business_id, uid=new.uid, cow=cow)
    return cow.pk


def cows_added_before(visit: Visit, uids: set[UUID]) -> dict[UUID, int]:
    """The keys of cows added under these ids."""
    rows = AddedCow.objects.within(visit.scope).filter(uid__in=uids)
    return dict(rows.values_list("uid", "cow_id"))


def _only_one(visit: Visit, number: str) -> Cow | None:
    cows = list(Cow.objects.within(visit.scope).on_farm().filter(farm_id=visit.farm_id, number=number)[:2])
    return cows[0] if len(cows) == 1 else None

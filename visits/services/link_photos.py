"""A photo hangs on the cow it was taken of as soon as both are here, whichever came first."""

from uuid import UUID

from visits.domain.crush_writing import WritingKind
from visits.models import CrushWriting, Trim, TrimPhoto, Visit


def link_photos(*, visit: Visit) -> None:
    """Join the loose photos of the visit to the cows that have arrived."""
    loose = list(
        TrimPhoto.objects.within(visit.scope).filter(visit=visit, trim__isnull=True).defer("picture")
    )
    if not loose:
        return
    trims = _trims_by_record(visit, {photo.record for photo in loose})
    joined = [photo for photo in loose if photo.record in trims]
    for photo in joined:
        photo.trim_id = trims[photo.record]
    TrimPhoto.objects.within(visit.scope).bulk_update(joined, ["trim"])


def _trims_by_record(visit: Visit, records: set[UUID]) -> dict[UUID, int]:
    rows = CrushWriting.objects.within(visit.scope).filter(visit=visit, kind=WritingKind.COW.value)
    cows = dict(rows.filter(record__in=records).order_by().values_list("record", "cow_id"))
    trims = Trim.objects.with_taken_back(visit.scope).filter(visit=visit, cow_id__in=set(cows.values()))
    by_cow = dict(trims.values_list("cow_id", "pk"))
    return {record: by_cow[cow] for record, cow in cows.items() if cow in by_cow}

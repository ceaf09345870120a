"""One cow at the crush is put down from within the program: a writing like those that phones send."""

from dataclasses import dataclass
from datetime import datetime
from uuid import UUID, uuid5

from django.db import transaction

from farms.models import Cow
from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from trimops.tenancy.same_business import require_same_business
from visits.domain.crush_entry import CowEntry
from visits.domain.crush_merge import group_of, merge
from visits.domain.crush_writing import WritingKind
from visits.domain.trim_refusals import refusals
from visits.domain.visit_states import VisitState
from visits.domain.writing_content import CowContent, content_json
from visits.models import CrushWriting, Trim, Visit
from visits.selectors.placed_writings import placed_writings
from visits.services.keep_writings import keep_writings
from visits.services.sift_writings import TOO_OLD

NO_PHONE = UUID(int=0)


class EntryContradicts(RuleBroken):
    """The entry cannot be kept as it is; the message lists what to mend."""

    code = "entry_contradicts"


class VisitNotUnderWay(RuleBroken):
    """Cows are put down on a visit that is under way, or late on one that is finished."""

    code = "visit_not_under_way"


class CowOfAnotherFarm(RuleBroken):
    """The cow is not of the farm that is being visited."""

    code = "cow_of_another_farm"


@dataclass(frozen=True)
class CrushRecord:
    """One cow as put down: the entry, when, and the id made where it was put down."""

    cow: Cow
    entry: CowEntry
    client_id: UUID
    recorded_at: datetime
    told_vet: str = ""


@transaction.atomic
def record_trim(*, visit: Visit, record: CrushRecord, by: User) -> Trim:
    """Keep the cow, or replace what was kept of her on this visit; the earlier words stay in her history.

    Refused with every reason at once when the entry contradicts itself (a block on the sore claw, T8). Sending the
    same record again changes nothing.
    """
    require_same_business(visit, record.cow)
    row = visit.locked()
    _check(row, record)
    writing = _writing(row, record, by)
    if not CrushWriting.objects.within(row.scope).filter(uid=writing.uid).exists():
        keep_writings(visit=row, rows=[writing])
    return Trim.objects.with_taken_back(row.scope).get(visit=row, cow=record.cow)


def _check(visit: Visit, record: CrushRecord) -> None:
    if visit.visit_state not in (VisitState.UNDER_WAY, VisitState.FINISHED):
        raise VisitNotUnderWay("Start the visit first: cows are noted while it is under way.")
    if visit.versions_dropped_at:
        raise VisitNotUnderWay(TOO_OLD)
    if record.cow.farm_id != visit.farm_id:
        raise CowOfAnotherFarm(f"Cow {record.cow.number} is not of this farm.")
    faults = refusals(record.entry)
    if faults:
        raise EntryContradicts(" ".join(_sentence(fault.foot, fault.text) for fault in faults))


def _sentence(foot: object, text: str) -> str:
    label = getattr(foot, "label", "")
    return f"{label.capitalize()}: {text}" if label else text


def _writing(visit: Visit, record: CrushRecord, by: User) -> CrushWriting:
    """Placed where the record says; an edit of what shows now."""
    at = record.recorded_at
    content = CowContent(record.cow.pk, record.entry, record.told_vet)
    return CrushWriting(
        business_id=visit.business_id,
        uid=uuid5(record.client_id, at.isoformat()),
        visit=visit,
        kind=WritingKind.COW.value,
        record=record.client_id,
        after=_showing(visit, record),
        cow=record.cow,
        content=content_json(content),
        phone=NO_PHONE,
        made_at=at,
        placed_at=at,
        received_at=at,
        by=by,
    )


def _showing(visit: Visit, record: CrushRecord) -> UUID | None:
    group = group_of(WritingKind.COW, record.client_id, record.cow.pk)
    standing = merge(w for w in placed_writings(visit.scope, visit) if w.group == group)
    return next((place.shows for place in standing.values()), None)

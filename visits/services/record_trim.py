"""One cow at the crush is put down: what was seen and done, blocks on and off, the vet's part, the next look."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from django.db import transaction

from farms.models import Cow
from trimops.accounts.models import User
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.tenancy.same_business import require_same_business
from visits.domain.crush_entry import CowEntry
from visits.domain.referral import referrals_for
from visits.domain.trim_refusals import refusals
from visits.domain.visit_states import VisitState
from visits.models import Referral, Trim, Visit
from visits.selectors.business_figures import figures_of
from visits.services.trim_blocks import note_blocks
from visits.services.trim_feet import store_feet
from visits.services.trim_kit import use_kit
from visits.services.trim_rechecks import note_rechecks
from visits.services.trim_versions import keep_earlier_version


class EntryContradicts(RuleBroken):
    """The entry cannot be kept as it is; the message lists what to mend."""

    code = "entry_contradicts"


class VisitNotUnderWay(RuleBroken):
    """Cows are put down on a visit that is under way."""

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
    known = Trim.objects.within(row.scope).filter(visit=row, cow=record.cow).first()
    if known is not None and known.client_id == record.client_id and known.recorded_at == record.recorded_at:
        return known
    trim = _renewed(known, record, by) if known else _new(row, record, by)
    _store(trim, row, record)
    return trim


def _check(visit: Visit, record: CrushRecord) -> None:
    if visit.visit_state is not VisitState.UNDER_WAY:
        raise VisitNotUnderWay("Start the visit first: cows are put down while it is under way.")
    if record.cow.farm_id != visit.farm_id:
        raise CowOfAnotherFarm(f"Cow {record.cow.number} is not of this farm.")
    faults = refusals(record.entry)
    if faults:
        raise EntryContradicts(" ".join(_sentence(fault.foot, fault.text) for fault in faults))


def _sentence(foot: object, text: str) -> str:
    label = getattr(foot, "label", "")
    return f"{label.capitalize()}: {text}" if label else text


def _new(visit: Visit, record: CrushRecord, by: User) -> Trim:
    return Trim(business_id=visit.business_id, visit=visit, cow=record.cow, recorded_by=by)


def _renewed(known: Trim, record: CrushRecord, by: User) -> Trim:
    keep_earlier_version(known, at=record.recorded_at, by=by)
    known.version += 1
    known.recorded_by = by
    return known


def _store(trim: Trim, visit: Visit, record: CrushRecord) -> None:
    entry, figures = record.entry, figures_of(visit.scope)
    day = local_day(record.recorded_at, visit.business.zone)
    trim.client_id, trim.recorded_at = record.client_id, record.recorded_at
    trim.kind = entry.kind.value
    trim.mobility_scale = entry.mobility_scale.value if entry.mobility_scale else ""
    trim.mobility_score = entry.mobility_score
    trim.belly_band_minutes = entry.belly_band_minutes
    trim.note = entry.note
    trim.full_clean()
    trim.save()
    store_feet(trim, entry.feet)
    _store_referrals(trim, record)
    note_blocks(trim, entry.feet, day, figures.rechecks)
    note_rechecks(trim, entry, day, figures.rechecks)
    use_kit(trim, entry.feet, record.recorded_at)


def _store_referrals(trim: Trim, record: CrushRecord) -> Sequence[Referral]:
    Referral.objects.within(trim.scope).filter(trim=trim).delete()
    rows = [
        Referral(
            business_id=trim.business_id,
            trim=trim,
            foot=advice.foot.value if advice.foot else "",
            reason=advice.reason,
            told_whom=record.told_vet,
            told_at=record.recorded_at if record.told_vet else None,
        )
        for advice in referrals_for(record.entry)
    ]
    return Referral.objects.bulk_create(rows)

"""The cows of a visit as they show: each brought to what its shown writing says, or taken back."""

from collections.abc import Sequence

from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job
from trimops.kernel.clock import local_day
from visits.domain.crush_entry import CowEntry
from visits.domain.referral import referrals_for
from visits.domain.visit_states import VisitState
from visits.domain.writing_content import CowContent
from visits.models import Referral, Trim, Visit
from visits.selectors.business_figures import figures_of
from visits.services.follow_feet import follow_feet
from visits.services.link_photos import link_photos
from visits.services.shown_writing import ShownWriting
from visits.services.stored_cow import StoredCow
from visits.services.trim_feet import store_feet
from visits.services.trim_kit import use_kit

COLUMNS = [
    *("client_id", "version", "kind", "mobility_scale", "mobility_score", "belly_band_minutes"),
    *("crush_seconds", "for_vet", "told_vet", "note", "taken_back_at", "recorded_at", "recorded_by"),
]


def show_cows(*, visit: Visit, shown: Sequence[ShownWriting]) -> None:
    """Store what shows of these cows. After the finish, re-checks are gathered and the draft is made once more.

    A cow whose shown writing takes her back keeps her row, for history, with nothing hanging on it.
    """
    cows = _stored(visit, shown)
    if not cows:
        return
    store_feet(cows)
    _store_referrals(visit, cows)
    follow_feet(visit=visit, cows=cows, figures=figures_of(visit.scope).rechecks)
    use_kit(visit=visit, cows=cows, noted_at=max(writing.noted_at for writing in shown))
    link_photos(visit=visit)
    if visit.visit_state is VisitState.FINISHED:
        enqueue(Job.BOOK_RECHECKS, visit.business_id, visit_id=visit.pk)
        enqueue(Job.DRAFT_INVOICE, visit.business_id, visit_id=visit.pk)


def _stored(visit: Visit, shown: Sequence[ShownWriting]) -> list[StoredCow]:
    """The trims' own rows, made or changed. A cow that was never there and is taken back leaves none."""
    keys = [writing.cow_id for writing in shown]
    rows = Trim.objects.with_taken_back(visit.scope).filter(visit=visit, cow_id__in=keys)
    known = {trim.cow_id: trim for trim in rows}
    wanted = [writing for writing in shown if writing.cow_id in known or not writing.row.is_gone]
    cows = [_say(known.get(writing.cow_id), visit, writing) for writing in wanted]
    Trim.objects.bulk_create([cow.trim for cow in cows if cow.trim.pk is None])
    changed = [cow.trim for cow in cows if cow.trim.cow_id in known]
    Trim.objects.with_taken_back(visit.scope).bulk_update(changed, COLUMNS)
    return cows


def _say(trim: Trim | None, visit: Visit, writing: ShownWriting) -> StoredCow:
    row, content = writing.row, writing.content()
    since = min(trim.recorded_at, writing.begun) if trim else writing.begun
    trim = trim or Trim(business_id=visit.business_id, visit=visit, cow_id=writing.cow_id)
    is_here = isinstance(content, CowContent) and not row.is_gone
    entry = content.entry if isinstance(content, CowContent) and is_here else CowEntry()
    trim.visit, trim.client_id, trim.version = visit, row.record, writing.versions
    # The trim is of when she was in the crush; `version` and the writings tell that her words were changed since.
    trim.recorded_at, trim.recorded_by_id = writing.begun, row.by_id
    trim.taken_back_at = None if is_here else writing.at
    trim.told_vet = content.told_vet if isinstance(content, CowContent) and is_here else ""
    _put_words(trim, entry)
    return StoredCow(trim, entry, local_day(writing.begun, visit.business.zone), since)


def _put_words(trim: Trim, entry: CowEntry) -> None:
    trim.kind = entry.kind.value
    trim.mobility_scale = entry.mobility_scale.value if entry.mobility_scale else ""
    trim.mobility_score = entry.mobility_score
    trim.belly_band_minutes = entry.belly_band_minutes
    trim.crush_seconds = entry.crush_seconds
    trim.note, trim.for_vet = entry.note, entry.for_vet


def _store_referrals(visit: Visit, cows: Sequence[StoredCow]) -> None:
    Referral.objects.within(visit.scope).filter(trim_id__in=[cow.trim.pk for cow in cows]).delete()
    rows = [
        Referral(
            business_id=visit.business_id,
            trim=cow.trim,
            foot=advice.foot.value if advice.foot else "",
            reason=advice.reason,
            told_whom=cow.trim.told_vet,
            told_at=cow.trim.recorded_at if cow.trim.told_vet else None,
        )
        for cow in cows
        for advice in referrals_for(cow.entry)
    ]
    Referral.objects.bulk_create(rows)

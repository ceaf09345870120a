"""The cows of the history as rows: trims, feet, findings, actions and what was the vet's."""

from collections.abc import Iterator
from datetime import timedelta

from farms.models import Cow
from trimops.portal.demo.build_people import Crew
from trimops.portal.demo.past import CowSeen, PastVisit, SeenKey
from visits.domain.crush_entry import FootEntry
from visits.domain.referral import referrals_for
from visits.models import ClawAction, Finding, Referral, Trim, TrimmedFoot, Visit

BATCH = 900
SIGNS = ("has_pain", "has_swelling", "swelling_above_dewclaw", "sensitive_tissue")
Rows = list[tuple[Trim, CowSeen]]
FeetRows = list[tuple[TrimmedFoot, FootEntry]]


def build_trims(
    crew: Crew, herds: list[list[Cow]], past: list[PastVisit], visits: list[Visit]
) -> dict[SeenKey, Trim]:
    """The trims by (number of the visit, number of the cow)."""
    keyed = {
        (number, seen.cow): (_trim(crew, visits[number], herds[p.farm][seen.cow], p, seen), seen)
        for number, p in enumerate(past)
        for seen in p.cows
    }
    rows = list(keyed.values())
    Trim.objects.bulk_create([trim for trim, _ in rows], batch_size=BATCH)
    _store_feet(rows)
    Referral.objects.bulk_create([row for trim, seen in rows for row in _referrals(trim, seen)])
    return {key: trim for key, (trim, _) in keyed.items()}


def _trim(crew: Crew, visit: Visit, cow: Cow, past: PastVisit, seen: CowSeen) -> Trim:
    entry = seen.entry
    return Trim(
        business=crew.business,
        visit=visit,
        cow=cow,
        kind=entry.kind.value,
        mobility_scale=entry.mobility_scale.value if entry.mobility_scale else "",
        mobility_score=entry.mobility_score,
        crush_seconds=_seconds_in_crush(past, seen),
        recorded_at=past.start + timedelta(minutes=seen.minute),
        recorded_by=crew.driver(past.van),
    )


def _seconds_in_crush(past: PastVisit, seen: CowSeen) -> int:
    """Two thirds of the time since the cow before her (or the start); the rest went on fetching and catching."""
    before = max((each.minute for each in past.cows if each.minute < seen.minute), default=0.0)
    return round(min(30.0, seen.minute - before) * 40)


def _store_feet(rows: Rows) -> None:
    feet: FeetRows = [(_foot(trim, foot), foot) for trim, seen in rows for foot in seen.entry.feet]
    TrimmedFoot.objects.bulk_create([row for row, _ in feet], batch_size=BATCH)
    Finding.objects.bulk_create(
        [item for row, foot in feet for item in _findings(row, foot)], batch_size=BATCH
    )
    ClawAction.objects.bulk_create(
        [item for row, foot in feet for item in _actions(row, foot)], batch_size=BATCH
    )


def _foot(trim: Trim, foot: FootEntry) -> TrimmedFoot:
    signs = {sign: getattr(foot, sign) for sign in SIGNS}
    return TrimmedFoot(
        business_id=trim.business_id, trim=trim, foot=foot.foot.value, wall_mm=foot.wall_mm, **signs
    )


def _findings(row: TrimmedFoot, foot: FootEntry) -> Iterator[Finding]:
    for item in foot.findings:
        yield Finding(
            business_id=row.business_id,
            trimmed_foot=row,
            lesion=item.lesion.value,
            claw=item.claw.value,
            zone=item.zone,
            severity=item.severity,
            dd_stage=item.dd_stage.value if item.dd_stage else "",
        )


def _actions(row: TrimmedFoot, foot: FootEntry) -> Iterator[ClawAction]:
    for action in foot.actions:
        yield ClawAction(
            business_id=row.business_id,
            trimmed_foot=row,
            kind=action.kind.value,
            claw=action.claw.value if action.claw else "",
            block_kind=action.block_kind.value if action.block_kind else "",
        )


def _referrals(trim: Trim, seen: CowSeen) -> Iterator[Referral]:
    for advice in referrals_for(seen.entry):
        yield Referral(
            business_id=trim.business_id,
            trim=trim,
            foot=advice.foot.value if advice.foot else "",
            reason=advice.reason,
            told_whom="the herd manager, for the vet",
            told_at=trim.recorded_at,
        )

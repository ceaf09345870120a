"""The feet of trims, with findings and actions, as rows."""

from collections.abc import Sequence

from visits.domain.crush_entry import SIGNS, ActionEntry, FindingEntry, FootEntry
from visits.models import ClawAction, Finding, Trim, TrimmedFoot
from visits.services.stored_cow import StoredCow


def store_feet(cows: Sequence[StoredCow]) -> None:
    """Replace the feet of these trims, all of one business, by what they say now."""
    if not cows:
        return
    trims = [cow.trim.pk for cow in cows]
    TrimmedFoot.objects.within(cows[0].trim.scope).filter(trim_id__in=trims).delete()
    feet = [(_foot_row(cow.trim, foot), foot) for cow in cows for foot in cow.entry.feet]
    TrimmedFoot.objects.bulk_create([row for row, _ in feet])
    Finding.objects.bulk_create([_finding_row(row, found) for row, foot in feet for found in foot.findings])
    ClawAction.objects.bulk_create(
        [_action_row(row, action) for row, foot in feet for action in foot.actions]
    )


def _foot_row(trim: Trim, entry: FootEntry) -> TrimmedFoot:
    return TrimmedFoot(
        business_id=trim.business_id,
        trim=trim,
        foot=entry.foot.value,
        wall_mm=entry.wall_mm,
        wall_measured_from=entry.wall_measured_from,
        toe_angle=entry.toe_angle,
        look_again_days=entry.look_again_days,
        for_vet=entry.for_vet,
        **{sign: getattr(entry, sign) for sign in SIGNS},
    )


def _finding_row(foot: TrimmedFoot, finding: FindingEntry) -> Finding:
    return Finding(
        business_id=foot.business_id,
        trimmed_foot=foot,
        lesion=finding.lesion.value,
        claw=finding.claw.value,
        zone=finding.zone,
        severity=finding.severity,
        dd_stage=finding.dd_stage.value if finding.dd_stage else "",
    )


def _action_row(foot: TrimmedFoot, action: ActionEntry) -> ClawAction:
    return ClawAction(
        business_id=foot.business_id,
        trimmed_foot=foot,
        kind=action.kind.value,
        claw=action.claw.value if action.claw else "",
        block_kind=action.block_kind.value if action.block_kind else "",
    )

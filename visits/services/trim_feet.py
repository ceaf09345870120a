"""The feet of a trim, with findings and actions, as rows."""

from collections.abc import Sequence

from visits.domain.crush_entry import SIGNS, ActionEntry, FindingEntry, FootEntry
from visits.models import ClawAction, Finding, Trim, TrimmedFoot


def store_feet(trim: Trim, feet: Sequence[FootEntry]) -> None:
    """Replace the feet of `trim` by these."""
    TrimmedFoot.objects.within(trim.scope).filter(trim=trim).delete()
    findings: list[Finding] = []
    actions: list[ClawAction] = []
    for entry in feet:
        row = _foot_row(trim, entry)
        row.full_clean()
        row.save()
        findings += [_finding_row(row, finding) for finding in entry.findings]
        actions += [_action_row(row, action) for action in entry.actions]
    Finding.objects.bulk_create(findings)
    ClawAction.objects.bulk_create(actions)


def _foot_row(trim: Trim, entry: FootEntry) -> TrimmedFoot:
    return TrimmedFoot(
        business_id=trim.business_id,
        trim=trim,
        foot=entry.foot.value,
        wall_mm=entry.wall_mm,
        wall_measured_from=entry.wall_measured_from,
        toe_angle=entry.toe_angle,
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

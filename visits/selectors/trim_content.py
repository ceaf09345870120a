"""A trim as plain values: for its history and for what goes over the wire."""

from collections.abc import Mapping

from django.db.models import Prefetch

from visits.domain.crush_entry import SIGNS
from visits.models import ClawAction, Finding, Trim, TrimmedFoot

FOOT_FIELDS = ("foot", "wall_mm", "wall_measured_from", "toe_angle", *SIGNS)


def trim_content(trim: Trim) -> dict[str, object]:
    """Everything put down of one cow, JSON-ready."""
    scope = trim.scope
    feet = (
        TrimmedFoot.objects.within(scope)
        .filter(trim=trim)
        .order_by("id")
        .prefetch_related(
            Prefetch("findings", queryset=Finding.objects.within(scope).order_by("id")),
            Prefetch("actions", queryset=ClawAction.objects.within(scope).order_by("id")),
        )
    )
    return {
        "cow": trim.cow_id,
        "kind": trim.kind,
        "mobility_scale": trim.mobility_scale,
        "mobility_score": trim.mobility_score,
        "belly_band_minutes": trim.belly_band_minutes,
        "note": trim.note,
        "recorded_at": trim.recorded_at.isoformat(),
        "recorded_by": trim.recorded_by_id,
        "feet": [_foot(row) for row in feet],
    }


def _foot(row: TrimmedFoot) -> Mapping[str, object]:
    return {
        **{name: getattr(row, name) for name in FOOT_FIELDS},
        "findings": [
            {
                "lesion": finding.lesion,
                "claw": finding.claw,
                "zone": finding.zone,
                "zone_map": finding.zone_map,
                "severity": finding.severity,
                "dd_stage": finding.dd_stage,
            }
            for finding in row.findings.all()
        ],
        "actions": [
            {"kind": action.kind, "claw": action.claw, "block_kind": action.block_kind}
            for action in row.actions.all()
        ],
    }

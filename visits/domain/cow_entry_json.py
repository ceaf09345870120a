"""One cow as she goes over the wire: every key present, codes as text, what is empty as "" or null."""

from visits.domain.crush_entry import SIGNS, ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.feet import ZoneMap

FOOT_MEASURES = ("wall_mm", "wall_measured_from", "toe_angle", "look_again_days", "for_vet")


def cow_entry_json(entry: CowEntry) -> dict[str, object]:
    """The entry as JSON-ready values; `read_cow_entry` makes the same entry of them again."""
    return {
        "mobility_scale": entry.mobility_scale.value if entry.mobility_scale else "",
        "mobility_score": entry.mobility_score,
        "belly_band_minutes": entry.belly_band_minutes,
        "crush_seconds": entry.crush_seconds,
        "note": entry.note,
        "for_vet": entry.for_vet,
        "feet": [_foot(foot) for foot in entry.feet],
    }


def _foot(foot: FootEntry) -> dict[str, object]:
    return {
        "foot": foot.foot.value,
        **{name: getattr(foot, name) for name in (*FOOT_MEASURES, *SIGNS)},
        "findings": [_finding(finding) for finding in foot.findings],
        "actions": [_action(action) for action in foot.actions],
    }


def _finding(finding: FindingEntry) -> dict[str, object]:
    return {
        "lesion": finding.lesion.value,
        "claw": finding.claw.value,
        "zone": finding.zone,
        "zone_map": ZoneMap.ILC.value,
        "severity": finding.severity,
        "dd_stage": finding.dd_stage.value if finding.dd_stage else "",
    }


def _action(action: ActionEntry) -> dict[str, object]:
    return {
        "kind": action.kind.value,
        "claw": action.claw.value if action.claw else "",
        "block_kind": action.block_kind.value if action.block_kind else "",
    }

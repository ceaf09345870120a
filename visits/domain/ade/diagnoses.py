"""Lesions seen, as diagnosis events: the exchange has no resource for an observation of a claw.

Each says in its remark that it is none of a vet. Severity is the trimmer's 1 to 3. The exchange's `stage` (acute,
chronic …) is left out, since a trimmer does not judge it; the stage of digital dermatitis (M0 to M4.1) is no value
of that list and stands in `description`. `site` is free text and holds the map and the number on it.
"""

from visits.domain.ade.envelope import animal_event
from visits.domain.ade.herd_out import CowOut, FarmOut, TrimOut
from visits.domain.ade.identifiers import lesion_id
from visits.domain.ade.lists import Json, JsonObject
from visits.domain.ade.positions import position_of_lesion, positions
from visits.domain.crush_entry import FindingEntry
from visits.domain.feet import Foot, ZoneMap, zone_name

SEEN_AT_TRIM = "seen at trim, not a veterinary diagnosis"
_SEVERITY = {1: "Light", 2: "Moderate", 3: "Severe"}


def lesions_seen(farm: FarmOut, cow: CowOut, trim: TrimOut) -> JsonObject | None:
    """All lesions of one cow at one trim, as one event; None where nothing was seen."""
    seen: list[Json] = [
        _lesion(f"lesions-{trim.key}-{foot.foot.value}-{number}", foot.foot, finding)
        for foot in trim.entry.feet
        for number, finding in enumerate(foot.findings, start=1)
    ]
    if not seen:
        return None
    head = animal_event("DiagnosisEvent", f"lesions-{trim.key}", farm, cow, trim.at, trim.uid)
    return {**head, "remark": SEEN_AT_TRIM, "diagnoses": seen}


def _lesion(key: str, foot: Foot, finding: FindingEntry) -> JsonObject:
    place = position_of_lesion(finding.lesion, foot, finding.claw)
    told: JsonObject = {
        "id": key,
        "name": finding.lesion.label.capitalize(),
        "diagnosisCode": dict(lesion_id(finding.lesion)),
        "severity": _SEVERITY[finding.severity],
        "severityScore": finding.severity,
        "positions": positions([place]),
    }
    if finding.zone is not None:
        told["site"] = f"{ZoneMap.ILC.value} zone {finding.zone} ({zone_name(finding.zone)})"
    if finding.dd_stage is not None:
        told["description"] = f"stage {finding.dd_stage.value} ({finding.dd_stage.label})"
    return told

"""What was put down of a cow in few words, the same on the phone, on pages and on paper."""

from visits.domain.actions import FUNCTIONAL_STEPS, ActionKind
from visits.domain.crush_entry import ActionEntry, CowEntry, FindingEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import LESIONS

PLAIN_STEPS = (*FUNCTIONAL_STEPS, ActionKind.NO_CUT)
"""Not told step by step: the kind of trim says it."""


def place_words(foot: Foot, claw: Claw | None) -> str:
    """ "left hind outer"."""
    return f"{foot.label} {claw.label.removesuffix(' claw')}" if claw else foot.label


def found_words(foot: Foot, finding: FindingEntry) -> str:
    """ "left hind outer, zone 4: sole ulcer, 2"."""
    zone = "" if finding.zone is None else f", zone {finding.zone}"
    stage = f" {finding.dd_stage.value}" if finding.dd_stage else ""
    name = LESIONS[finding.lesion].name
    return f"{place_words(foot, finding.claw)}{zone}: {name}{stage}, {finding.severity}"


def done_words(foot: Foot, action: ActionEntry) -> str:
    """ "left hind inner: wooden block"."""
    label = action.block_kind.label if action.block_kind else action.kind.label
    return f"{place_words(foot, action.claw)}: {label}"


def entry_words(entry: CowEntry) -> list[str]:
    """The kind of trim and what walked in, then line by line what was seen and done, for the vet, and the note."""
    lines = [_first_words(entry)]
    for foot in entry.feet:
        lines.extend(found_words(foot.foot, finding) for finding in foot.findings)
        lines.extend(done_words(foot.foot, act) for act in foot.actions if act.kind not in PLAIN_STEPS)
        lines.extend([f"{foot.foot.label}, for the vet: {foot.for_vet}"] if foot.for_vet else [])
    lines.extend([f"for the vet: {entry.for_vet}"] if entry.for_vet else [])
    return [*lines, *([entry.note] if entry.note else [])]


def _first_words(entry: CowEntry) -> str:
    feet = ", ".join(foot.foot.label for foot in entry.feet)
    kind = f"{entry.kind.label}: {feet}" if feet else entry.kind.label
    if entry.mobility_scale is None or entry.mobility_score is None:
        return kind
    return f"{kind}; walked in {entry.mobility_score} ({entry.mobility_scale.label})"

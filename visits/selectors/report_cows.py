"""The cows of a visit as its report tells them."""

from collections import defaultdict
from collections.abc import Iterable

from visits.documents.visit_report_content import CowLine, FootLine, Found
from visits.domain.actions import FUNCTIONAL_STEPS, ActionKind, BlockKind
from visits.domain.feet import ZONE_NAMES, Claw, Foot
from visits.domain.lesions import LESIONS, DDStage, LesionCode
from visits.domain.mobility import MobilityScale, is_lame
from visits.models import ClawAction, Finding, Trim, TrimmedFoot
from visits.selectors.visit_story import VisitStory

LOOKED_AT = "looked at"
PLAIN = {"trimmed", ActionKind.NO_CUT.label, LOOKED_AT}


def cow_lines(story: VisitStory) -> tuple[CowLine, ...]:
    """In the order in which they were done."""
    return tuple(_cow_line(trim, story) for trim in story.trims)


def found_on(foot: TrimmedFoot, for_vet: bool = False) -> tuple[Found, ...]:
    """The lesions seen on a foot."""
    return tuple(_found(finding, for_vet) for finding in foot.findings.all())


def done_on(foot: TrimmedFoot) -> tuple[str, ...]:
    """What was done to a foot, each thing once; a plain trim in one word."""
    return tuple(dict.fromkeys(_done(action.kind, action.block_kind) for action in foot.actions.all()))


def block_on(actions: Iterable[ClawAction]) -> Claw | None:
    """The claw that a block was put on."""
    return next((Claw(a.claw) for a in actions if a.kind == ActionKind.BLOCK and a.claw), None)


def _walked(trim: Trim) -> str:
    """ "3, UK 0 to 3"; empty when she was not scored, or not lame by the scale she was scored on."""
    if trim.mobility_score is None or not trim.mobility_scale:
        return ""
    scale = MobilityScale(trim.mobility_scale)
    return f"{trim.mobility_score}, {scale.label}" if is_lame(scale, trim.mobility_score) else ""


def _cow_line(trim: Trim, story: VisitStory) -> CowLine:
    due = {row.foot: row.due_until for row in story.rechecks if row.cow_id == trim.cow_id}
    vet = [row for row in story.referrals if row.trim_id == trim.pk]
    why: dict[str, list[str]] = defaultdict(list)
    for row in vet:
        why[row.foot].append(row.reason)
    lines = []
    for foot in trim.feet.all():
        line = FootLine(
            Foot(foot.foot),
            found_on(foot, foot.foot in why),
            done_on(foot) or (LOOKED_AT,),
            block_on(foot.actions.all()),
            due.get(foot.foot),
            tuple(dict.fromkeys(why.get(foot.foot, ()))),
        )
        # A foot that was only trimmed or looked at has nothing to tell; the cow's own line says what she had.
        if line.found or line.block_on or line.recheck_on or line.vet or set(line.done) - PLAIN:
            lines.append(line)
    notes = [f"Vet advised: {row.reason}." for row in vet if not row.foot]
    note = " ".join([*notes, trim.note]).strip()
    return CowLine(trim.cow.number, trim.get_kind_display(), tuple(lines), note, _walked(trim))


def _done(kind: str, block_kind: str) -> str:
    if kind in FUNCTIONAL_STEPS:
        return "trimmed"
    return BlockKind(block_kind).label + " on" if block_kind else ActionKind(kind).label


def _found(finding: Finding, for_vet: bool) -> Found:
    stage = DDStage(finding.dd_stage).label if finding.dd_stage else ""
    place = ZONE_NAMES.get(finding.zone, "") if finding.zone is not None else ""
    name = LESIONS[LesionCode(finding.lesion)].name
    return Found(name, Claw(finding.claw), finding.zone, place, finding.severity, for_vet, stage)

"""A finished visit as the values its report is drawn from."""

from collections import Counter
from collections.abc import Iterable
from datetime import date

from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from trimops.paper.letterhead import Letterhead
from visits.documents.visit_report_content import (
    BlockLine,
    Comparison,
    CowLine,
    FarmTask,
    FindingCount,
    FootLine,
    Found,
    Signature,
    VetReferral,
    VisitReport,
)
from visits.domain.actions import FUNCTIONAL_STEPS, ActionKind, BlockKind
from visits.domain.cautions import FOR_THE_FARM
from visits.domain.feet import ZONE_NAMES, Claw, Foot
from visits.domain.lesions import LESIONS, LesionCode
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import Finding, Referral, Trim, TrimmedFoot, Visit
from visits.selectors.report_end import (
    consumables_used,
    hygiene_steps,
    signed_at,
    told_lines,
    told_words,
)
from visits.selectors.visit_story import VisitStory, visit_story

LOOKED_AT = "looked at"
PLAIN = {"trimmed", ActionKind.NO_CUT.label, LOOKED_AT}


def report_content(visit: Visit) -> VisitReport:
    """Everything the report of a finished visit says, with times in the business's zone."""
    farm, zone = visit.farm, visit.business.zone
    scope = Scope(visit.business_id)
    story = visit_story(scope, visit)
    finished = signed_at(visit)
    return VisitReport(
        letterhead=letterhead_of(visit),
        farm_name=farm.name,
        farm_address=tuple(farm.address.splitlines()),
        visit_day=finished.date(),
        made_at=finished,
        started=visit.started_at.astimezone(zone) if visit.started_at else None,
        finished=finished,
        trimmers=_trimmers(visit, story),
        herd_size=farm.herd_size,
        whole_herd=0 < farm.herd_size <= len(story.trims),
        cows=tuple(_cow_line(trim, story) for trim in story.trims),
        reference=f"no. {visit.pk}",
        vet=tuple(_vet_line(row, visit) for row in story.referrals),
        blocks=tuple(_block_lines(story)),
        to_do=tuple(_tasks(story)),
        compared=_compared(scope, visit),
        findings=tuple(_finding_counts(scope, visit)),
        consumables=consumables_used(scope, visit),
        hygiene_level=farm.get_hygiene_level_display(),
        hygiene_steps=hygiene_steps(scope, visit),
        next_visit=_next_visit(scope, visit),
        signed=(Signature(visit.signed_by, "received it for the farm", finished),) if visit.signed_by else (),
        was_done=told_lines(visit.was_done),
        farm_to_do=told_lines(visit.farm_to_do),
        cautions=FOR_THE_FARM,
    )


def letterhead_of(visit: Visit) -> Letterhead:
    """The business as its papers name it."""
    business = visit.business
    return Letterhead(business.name, tuple(business.address.splitlines()), business.phone, business.email)


def _trimmers(visit: Visit, story: VisitStory) -> tuple[str, ...]:
    names = dict.fromkeys(str(trim.recorded_by) for trim in story.trims)
    return tuple(names) or ((str(visit.van.trimmer),) if visit.van else ())


def _cow_line(trim: Trim, story: VisitStory) -> CowLine:
    due = {row.foot: row.due_until for row in story.rechecks if row.cow_id == trim.cow_id}
    vet = {row.foot for row in story.referrals if row.trim_id == trim.pk}
    lines = [_foot_line(foot, due.get(foot.foot), foot.foot in vet) for foot in trim.feet.all()]
    # A foot that was only trimmed or looked at has nothing to tell; the cow's own line says what she had.
    feet = tuple(
        line for line in lines if line.found or line.block_on or line.recheck_on or set(line.done) - PLAIN
    )
    return CowLine(trim.cow.number, trim.get_kind_display(), feet, trim.note)


def _foot_line(foot: TrimmedFoot, recheck_on: date | None, for_vet: bool) -> FootLine:
    actions = list(foot.actions.all())
    blocks = [Claw(action.claw) for action in actions if action.kind == ActionKind.BLOCK and action.claw]
    return FootLine(
        Foot(foot.foot),
        tuple(_found(finding, for_vet) for finding in foot.findings.all()),
        tuple(dict.fromkeys(_done(action.kind, action.block_kind) for action in actions)) or (LOOKED_AT,),
        blocks[0] if blocks else None,
        recheck_on,
    )


def _done(kind: str, block_kind: str) -> str:
    if kind in FUNCTIONAL_STEPS:
        return "trimmed"
    return BlockKind(block_kind).label + " on" if block_kind else ActionKind(kind).label


def _found(finding: Finding, for_vet: bool) -> Found:
    stage = f" {finding.dd_stage}" if finding.dd_stage else ""
    place = ZONE_NAMES.get(finding.zone, "") if finding.zone is not None else ""
    name = LESIONS[LesionCode(finding.lesion)].name
    return Found(name + stage, Claw(finding.claw), finding.zone, place, finding.severity, for_vet)


def _vet_line(row: Referral, visit: Visit) -> VetReferral:
    foot = Foot(row.foot) if row.foot else None
    return VetReferral(row.trim.cow.number, foot, row.reason, told_words(row, visit))


def _block_lines(story: VisitStory) -> list[BlockLine]:
    return [
        BlockLine(b.cow.number, Foot(b.foot), Claw(b.claw), b.get_kind_display(), b.put_on, b.off_due)
        for b in story.blocks
        if b.off_on is None
    ]


def _tasks(story: VisitStory) -> list[FarmTask]:
    """What falls to the farm: the vet to be rung, blocked cows kept on good ground, feet to be shown again."""
    tasks = []
    if story.referrals:
        tasks.append(FarmTask("Ring the vet today", None, _cows(r.trim.cow.number for r in story.referrals)))
    if story.blocks:
        tasks.append(FarmTask("Keep on even, dry ground", None, _cows(b.cow.number for b in story.blocks)))
    if story.rechecks:
        by = min(row.due_until for row in story.rechecks)
        tasks.append(
            FarmTask("Bring again for the re-check", by, _cows(r.cow.number for r in story.rechecks))
        )
    return tasks


def _cows(numbers: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(numbers))


def _visit_before(scope: Scope, visit: Visit) -> Visit | None:
    rows = Visit.objects.within(scope).in_state(VisitState.FINISHED).filter(farm_id=visit.farm_id)
    rows = rows.filter(reason=VisitReason.ROUTINE.value, finished_at__lt=visit.finished_at).exclude(
        pk=visit.pk
    )
    return rows.order_by("-finished_at").first()


def _compared(scope: Scope, visit: Visit) -> tuple[Comparison, ...]:
    before = _visit_before(scope, visit)
    if before is None or before.finished_at is None:
        return ()
    day = local_day(before.finished_at, visit.business.zone)
    seen = Trim.objects.within(scope).filter(visit=before).count()
    return (Comparison(f"last routine visit, {day:%-d %b %Y}", seen),)


def _finding_counts(scope: Scope, visit: Visit) -> list[FindingCount]:
    now, before = _lesion_cows(scope, visit), None
    if earlier := _visit_before(scope, visit):
        before = _lesion_cows(scope, earlier)
    return [
        FindingCount(LESIONS[LesionCode(code)].name, cows, (before[code],) if before is not None else ())
        for code, cows in now.most_common()
    ]


def _lesion_cows(scope: Scope, visit: Visit) -> Counter[str]:
    rows = Finding.objects.within(scope).filter(trimmed_foot__trim__visit=visit)
    return Counter(code for code, _ in set(rows.values_list("lesion", "trimmed_foot__trim__cow_id")))


def _next_visit(scope: Scope, visit: Visit) -> str:
    rows = (
        Visit.objects.within(scope).open().filter(farm_id=visit.farm_id).order_by("planned_start", "due_from")
    )
    coming = rows.exclude(pk=visit.pk).first()
    if coming is None:
        return ""
    if coming.planned_start is not None:
        return f"{coming.planned_start.astimezone(visit.business.zone):%A %-d %B, %H:%M}"
    return f"between {coming.due_from:%-d %B} and {coming.due_until:%-d %B}"

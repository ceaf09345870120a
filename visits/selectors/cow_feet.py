"""One cow's feet over time, each as it was seen from below."""

from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from django.core.paginator import Page, Paginator

from farms.models import Cow
from trimops.kernel.scope import Scope
from trimops.paper.to_svg import to_svg
from visits.documents.sole_drawing import SoleMark, SoleView, small_sole_drawing
from visits.domain.actions import FUNCTIONAL_STEPS, ActionKind, BlockKind
from visits.domain.feet import ZONE_NAMES, Claw, Foot
from visits.domain.lesions import LESIONS, LesionCode
from visits.domain.mobility import MobilityScale
from visits.models import Block, ClawAction, Finding, Recheck, Trim, TrimmedFoot, TrimPhoto
from visits.selectors.open_referrals import open_referrals
from visits.selectors.report_cows import block_on
from visits.selectors.visit_story import trims_with_feet

PER_PAGE = 12
SOLE_WIDTH = 22.0


@dataclass(frozen=True)
class FootSeen:
    """A foot that had something: drawn, what was seen and what was done in words."""

    label: str
    sole: str
    seen: tuple[str, ...]
    done: tuple[str, ...]


@dataclass(frozen=True)
class AtCrush:
    """One time at the crush. `plain` are the feet on which nothing was seen and no block stands."""

    visit: int
    at: datetime
    work: str
    walked: str
    feet: tuple[FootSeen, ...]
    plain: tuple[str, ...]
    for_vet: tuple[str, ...]
    note: str
    photos: tuple[tuple[UUID, str], ...]


@dataclass(frozen=True)
class CowFeet:
    """What is due at her feet, whether she is still the vet's, and her times at the crush, the newest first."""

    is_for_vet: bool
    blocks: list[Block]
    rechecks: list[Recheck]
    times: list[AtCrush]
    page: "Page[Trim]"


def cow_feet(scope: Scope, cow: Cow, now: datetime, page: str | None = None) -> CowFeet:
    """In a fixed number of queries, whatever she has been through."""
    trims = trims_with_feet(scope).filter(cow=cow).newest_first()
    shown = Paginator(trims, PER_PAGE).get_page(page)
    photos = _photos_of(scope, [trim.pk for trim in shown])
    return CowFeet(
        is_for_vet=open_referrals(scope, now).filter(trim__cow=cow).exists(),
        blocks=list(Block.objects.within(scope).filter(cow=cow, off_on__isnull=True)),
        rechecks=list(Recheck.objects.within(scope).open().filter(cow=cow)),
        times=[_time(trim, tuple(photos.get(trim.pk, ()))) for trim in shown],
        page=shown,
    )


def _photos_of(scope: Scope, trims: list[int]) -> dict[int, list[tuple[UUID, str]]]:
    rows = TrimPhoto.objects.within(scope).filter(trim_id__in=trims).defer("picture")
    found: dict[int, list[tuple[UUID, str]]] = {}
    for photo in rows:
        if photo.trim_id is not None:
            found.setdefault(photo.trim_id, []).append((photo.uid, photo.get_foot_display()))
    return found


def _time(trim: Trim, photos: tuple[tuple[UUID, str], ...]) -> AtCrush:
    feet = list(trim.feet.all())
    told = [foot for foot in feet if foot.findings.all() or block_on(foot.actions.all())]
    walked = ""
    if trim.mobility_score is not None and trim.mobility_scale:
        walked = f"{trim.mobility_score} ({MobilityScale(trim.mobility_scale).label})"
    return AtCrush(
        visit=trim.visit_id,
        at=trim.recorded_at,
        work=trim.get_kind_display(),
        walked=walked,
        feet=tuple(_foot(foot) for foot in told),
        plain=tuple(foot.get_foot_display() for foot in feet if foot not in told),
        for_vet=tuple(referral.reason for referral in trim.referrals.all()),
        note=trim.note,
        photos=photos,
    )


def _foot(foot: TrimmedFoot) -> FootSeen:
    findings = list(foot.findings.all())
    marks = tuple(SoleMark(Claw(each.claw), each.zone) for each in findings)
    drawn = small_sole_drawing(SoleView(Foot(foot.foot), marks, block_on(foot.actions.all())), SOLE_WIDTH)
    done = dict.fromkeys(_done(action) for action in foot.actions.all())
    return FootSeen(
        foot.get_foot_display(), to_svg(drawn, "sole"), tuple(_seen(each) for each in findings), tuple(done)
    )


def _seen(finding: Finding) -> str:
    stage = f" {finding.dd_stage}" if finding.dd_stage else ""
    place = ZONE_NAMES.get(finding.zone, "") if finding.zone is not None else ""
    where = f"{finding.get_claw_display()}, {place}" if place else finding.get_claw_display()
    return f"{LESIONS[LesionCode(finding.lesion)].name}{stage}, {where}, {finding.severity} of 3"


def _done(action: ClawAction) -> str:
    if action.kind in FUNCTIONAL_STEPS:
        return "trimmed"
    if action.block_kind:
        return f"{BlockKind(action.block_kind).label} on the {action.get_claw_display()}"
    return ActionKind(action.kind).label

"""Stored trims as the entries they were made of."""

from collections import defaultdict
from collections.abc import Sequence

from trimops.kernel.scope import Scope
from visits.domain.actions import ActionKind, BlockKind
from visits.domain.cow_entry_json import FOOT_MEASURES
from visits.domain.crush_entry import SIGNS, ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.mobility import MobilityScale
from visits.models import ClawAction, Finding, Trim, TrimmedFoot


def entries_of(scope: Scope, trims: Sequence[Trim]) -> dict[int, CowEntry]:
    """What was put down of each, by the trim's key. Three queries however many there are; none for none."""
    if not trims:
        return {}
    keys = [trim.pk for trim in trims]
    findings: defaultdict[int, list[FindingEntry]] = defaultdict(list)
    for row in Finding.objects.within(scope).filter(trimmed_foot__trim_id__in=keys).order_by("pk"):
        findings[row.trimmed_foot_id].append(_finding(row))
    actions: defaultdict[int, list[ActionEntry]] = defaultdict(list)
    for done in ClawAction.objects.within(scope).filter(trimmed_foot__trim_id__in=keys).order_by("pk"):
        actions[done.trimmed_foot_id].append(_action(done))
    feet: defaultdict[int, list[FootEntry]] = defaultdict(list)
    for foot in TrimmedFoot.objects.within(scope).filter(trim_id__in=keys).order_by("pk"):
        feet[foot.trim_id].append(_foot(foot, findings[foot.pk], actions[foot.pk]))
    return {trim.pk: _cow(trim, feet[trim.pk]) for trim in trims}


def _cow(trim: Trim, feet: list[FootEntry]) -> CowEntry:
    return CowEntry(
        feet=tuple(feet),
        mobility_scale=MobilityScale(trim.mobility_scale) if trim.mobility_scale else None,
        mobility_score=trim.mobility_score,
        belly_band_minutes=trim.belly_band_minutes,
        crush_seconds=trim.crush_seconds,
        note=trim.note,
        for_vet=trim.for_vet,
    )


def _foot(row: TrimmedFoot, findings: list[FindingEntry], actions: list[ActionEntry]) -> FootEntry:
    same = {name: getattr(row, name) for name in (*FOOT_MEASURES, *SIGNS)}
    return FootEntry(foot=Foot(row.foot), findings=tuple(findings), actions=tuple(actions), **same)


def _finding(row: Finding) -> FindingEntry:
    return FindingEntry(
        lesion=LesionCode(row.lesion),
        claw=Claw(row.claw),
        zone=row.zone,
        severity=row.severity,
        dd_stage=DDStage(row.dd_stage) if row.dd_stage else None,
    )


def _action(row: ClawAction) -> ActionEntry:
    return ActionEntry(
        kind=ActionKind(row.kind),
        claw=Claw(row.claw) if row.claw else None,
        block_kind=BlockKind(row.block_kind) if row.block_kind else None,
    )

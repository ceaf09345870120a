"""What was seen and done at each cow's last trims, in few words, for the whole herd of a visit at once."""

from collections import defaultdict
from collections.abc import Iterable
from zoneinfo import ZoneInfo

from django.db.models import F, Window
from django.db.models.functions import RowNumber

from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import ActionEntry, FindingEntry
from visits.domain.entry_words import PLAIN_STEPS, done_words, found_words
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.models import ClawAction, Finding, Referral, Trim, Visit

MOST_TOLD = 3

Words = dict[int, list[str]]
"""Lines of text by the key of the trim."""


def past_trims(scope: Scope, visit: Visit, zone: ZoneInfo) -> dict[int, list[dict[str, object]]]:
    """The last three trims of each cow of the farm before this visit, newest first, by cow. Four queries."""
    trims = list(_last_trims(scope, visit))
    keys = [trim.pk for trim in trims]
    found, done, vet = _found(scope, keys), _done(scope, keys), _for_vet(scope, keys)
    told: dict[int, list[dict[str, object]]] = defaultdict(list)
    for trim in trims:
        told[trim.cow_id].append(
            {
                "day": local_day(trim.recorded_at, zone).isoformat(),
                "kind_label": trim.get_kind_display(),
                "score": trim.mobility_score,
                "scale": trim.mobility_scale,
                "found": found.get(trim.pk, []),
                "done": done.get(trim.pk, []),
                "for_vet": vet.get(trim.pk, []),
            }
        )
    return told


def _last_trims(scope: Scope, visit: Visit) -> Iterable[Trim]:
    newest = [F("recorded_at").desc(), F("id").desc()]
    rows = Trim.objects.within(scope).filter(visit__farm_id=visit.farm_id).exclude(visit=visit)
    ranked = rows.annotate(nth=Window(RowNumber(), partition_by=[F("cow_id")], order_by=newest))
    return ranked.filter(nth__lte=MOST_TOLD).order_by("cow_id", "nth")


def _found(scope: Scope, trims: list[int]) -> Words:
    rows = Finding.objects.within(scope).filter(trimmed_foot__trim_id__in=trims).order_by("id")
    names = ("trimmed_foot__trim_id", "trimmed_foot__foot", "lesion", "claw", "zone", "severity", "dd_stage")
    words: Words = defaultdict(list)
    for trim, foot, lesion, claw, zone, severity, stage in rows.values_list(*names):
        seen = FindingEntry(LesionCode(lesion), Claw(claw), zone, severity, DDStage(stage) if stage else None)
        words[trim].append(found_words(Foot(foot), seen))
    return words


def _done(scope: Scope, trims: list[int]) -> Words:
    rows = ClawAction.objects.within(scope).filter(trimmed_foot__trim_id__in=trims)
    names = ("trimmed_foot__trim_id", "trimmed_foot__foot", "kind", "claw", "block_kind")
    told = rows.exclude(kind__in=[kind.value for kind in PLAIN_STEPS]).order_by("id")
    words: Words = defaultdict(list)
    for trim, foot, kind, claw, block in told.values_list(*names):
        done = ActionEntry(
            ActionKind(kind), Claw(claw) if claw else None, BlockKind(block) if block else None
        )
        words[trim].append(done_words(Foot(foot), done))
    return words


def _for_vet(scope: Scope, trims: list[int]) -> Words:
    rows = Referral.objects.within(scope).filter(trim_id__in=trims).order_by("id")
    words: Words = defaultdict(list)
    for trim, foot, reason in rows.values_list("trim_id", "foot", "reason"):
        words[trim].append(f"{Foot(foot).label}: {reason}" if foot else reason)
    return words

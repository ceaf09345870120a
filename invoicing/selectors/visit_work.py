"""The work of finished visits, read from the cows put down."""

from bisect import bisect_left
from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from invoicing.domain.pricing import PriceItem
from invoicing.domain.visit_work import VisitWork, WorkPiece, foot_key, trim_key, visit_key
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.domain.actions import CORRECTIVE_STEPS, FUNCTIONAL_STEPS, ActionKind, BlockKind, TrimKind
from visits.domain.feet import Claw, Foot
from visits.domain.visit_states import VisitReason
from visits.models import ClawAction, Trim, TrimmedFoot, Visit

KINDS = {
    TrimKind.FUNCTIONAL.value: PriceItem.FUNCTIONAL,
    TrimKind.CORRECTIVE.value: PriceItem.CORRECTIVE,
    TrimKind.CHECK.value: PriceItem.CHECK,
}
CUTS = [kind.value for kind in FUNCTIONAL_STEPS | CORRECTIVE_STEPS]
LOOK_BACK = timedelta(days=400)
"""How far back a foot's trims are looked for; no guarantee is longer."""

FootOfCow = tuple[int, str]


@dataclass
class _Foot:
    """One lifted foot."""

    foot: str
    actions: list[ClawAction] = field(default_factory=list)

    @property
    def was_cut(self) -> bool:
        return any(action.kind in CUTS for action in self.actions)


def visit_work(visit: Visit) -> VisitWork:
    """The work of one finished visit. ValueError before the finish."""
    return visit_works(visit.scope, [visit])[0]


def visit_works(scope: Scope, visits: Sequence[Visit]) -> list[VisitWork]:
    """The work of each finished visit, in that order, in four queries (`visit.business` at hand)."""
    trims: defaultdict[int, list[Trim]] = defaultdict(list)
    rows = Trim.objects.within(scope).filter(visit__in=visits).select_related("cow")
    for trim in rows.order_by("recorded_at", "pk"):
        trims[trim.visit_id].append(trim)
    found = [trim for some in trims.values() for trim in some]
    feet, before = _feet(scope, found), _trims_before(scope, found)
    return [_work(visit, trims[visit.pk], feet, before) for visit in visits]


def _feet(scope: Scope, trims: Sequence[Trim]) -> dict[int, list[_Foot]]:
    keys = [trim.pk for trim in trims]
    rows = TrimmedFoot.objects.within(scope).filter(trim_id__in=keys).order_by("pk")
    known = {row.pk: (row.trim_id, _Foot(row.foot)) for row in rows}
    actions = ClawAction.objects.within(scope).filter(trimmed_foot__trim_id__in=keys)
    for action in actions.order_by("pk"):
        known[action.trimmed_foot_id][1].actions.append(action)
    feet: defaultdict[int, list[_Foot]] = defaultdict(list)
    for trim_id, foot in known.values():
        feet[trim_id].append(foot)
    return feet


def _trims_before(scope: Scope, trims: Sequence[Trim]) -> dict[FootOfCow, list[datetime]]:
    """When each foot of these cows was cut, in order."""
    if not trims:
        return {}
    rows = ClawAction.objects.within(scope).filter(
        kind__in=CUTS,
        trimmed_foot__trim__cow_id__in=[trim.cow_id for trim in trims],
        trimmed_foot__trim__taken_back_at__isnull=True,
        trimmed_foot__trim__recorded_at__gte=min(trim.recorded_at for trim in trims) - LOOK_BACK,
    )
    columns = ("trimmed_foot__trim__cow_id", "trimmed_foot__foot", "trimmed_foot__trim__recorded_at")
    cut: defaultdict[FootOfCow, list[datetime]] = defaultdict(list)
    for cow, foot, at in rows.order_by(columns[2]).values_list(*columns).distinct():
        cut[cow, foot].append(at)
    return cut


def _work(
    visit: Visit,
    trims: Sequence[Trim],
    feet: Mapping[int, list[_Foot]],
    before: Mapping[FootOfCow, list[datetime]],
) -> VisitWork:
    if visit.finished_at is None:
        raise ValueError("only a finished visit has work to bill")
    pieces = [piece for trim in trims for piece in _pieces(visit, trim, feet.get(trim.pk, []), before)]
    if pieces:
        pieces.append(WorkPiece(visit_key(visit.uid, PriceItem.CALL_OUT), PriceItem.CALL_OUT))
    return VisitWork(
        visit.pk,
        visit.uid,
        visit.farm_id,
        local_day(visit.finished_at, visit.business.zone),
        visit.started_at,
        visit.finished_at,
        visit.reason == VisitReason.URGENT,
        tuple(pieces),
    )


def _pieces(
    visit: Visit, trim: Trim, feet: Sequence[_Foot], before: Mapping[FootOfCow, list[datetime]]
) -> list[WorkPiece]:
    """The cow herself, then what was put on her feet."""
    words, zone = f"cow {trim.cow.number}", visit.business.zone
    last = {foot.foot: _day_before(before.get((trim.cow_id, foot.foot), []), trim, zone) for foot in feet}
    days = [day for day in last.values() if day is not None]
    cut = {foot.foot for foot in feet if foot.was_cut}
    item = KINDS[trim.kind]
    cow = WorkPiece(
        trim_key(trim.client_id, item),
        item,
        trim.pk,
        words,
        detail=", ".join(Foot(foot.foot).label for foot in feet),
        rechecks_trim_on=min(days) if days and len(days) == len(last) else None,
        had_full_trim={Foot.LEFT_HIND.value, Foot.RIGHT_HIND.value} <= cut,
    )
    put_on = [_put_on(trim, words, foot, last[foot.foot]) for foot in feet]
    return [cow, *(piece for some in put_on for piece in some)]


def _day_before(cuts: Sequence[datetime], trim: Trim, zone: ZoneInfo) -> date | None:
    place = bisect_left(cuts, trim.recorded_at)
    return local_day(cuts[place - 1], zone) if place else None


def _put_on(trim: Trim, words: str, foot: _Foot, last: date | None) -> list[WorkPiece]:
    seen: Counter[tuple[PriceItem, str]] = Counter()
    pieces = []
    for action in foot.actions:
        item = _item(action)
        if item is None:
            continue
        seen[item, action.claw] += 1
        key = foot_key(trim.client_id, foot.foot, item, _which(action.claw, seen[item, action.claw]))
        detail = Claw(action.claw).label if action.claw else ""
        pieces.append(WorkPiece(key, item, trim.pk, words, foot.foot, detail, last))
    return pieces


def _which(claw: str, count: int) -> str:
    if not claw:
        return str(count)
    return claw if count == 1 else f"{claw}/{count}"


def _item(action: ClawAction) -> PriceItem | None:
    if action.kind == ActionKind.BLOCK:
        return PriceItem.SHOE if action.block_kind == BlockKind.SHOE else PriceItem.BLOCK
    return {ActionKind.WRAP.value: PriceItem.WRAP, ActionKind.DRESSING.value: PriceItem.DRESSING}.get(
        action.kind
    )

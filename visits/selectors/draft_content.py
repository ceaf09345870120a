"""The cows to bring for a visit, as the values its draft list is drawn from."""

from collections.abc import Iterable, Iterator
from datetime import date, datetime
from itertools import groupby

from django.db.models import Max

from farms.domain.cow_status import CowStatus
from farms.domain.handling import CrushPlace
from farms.models import Cow, Farm
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.documents.draft_list_content import DraftCow, DraftGroup, DraftList
from visits.domain.cautions import LATE_PREGNANT
from visits.domain.draft_order import DraftCandidate, DraftLine, DraftOrder, draft_order
from visits.models import AskedCow, Recheck, Trim, Visit
from visits.selectors.day_arrivals import arrival_at
from visits.selectors.report_content import letterhead_of

MOST_LEFT = 20
NEEDS = {
    1: "Lame now, or asked for",
    2: "Blocks and re-checks",
    3: "Before drying off",
    4: "Heifers before calving",
    5: "In mid-lactation",
    6: "Longest since the last trim",
}
RULE_NOTE = (
    "Order: lame first, then blocks and re-checks, then 3 to 10 days before drying off (AHDB trim list); 60 to 100 "
    "days in milk (Griffiths 2018); the rest is common practice."
)


def draft_content(visit: Visit, now: datetime) -> DraftList:
    """The list for the visit's day, cut at the number of cows expected."""
    zone = visit.business.zone
    arrive = (visit.planned_start or now).astimezone(zone)
    order = draft_for(visit, arrive.date())
    return DraftList(
        letterhead=letterhead_of(visit),
        farm_name=visit.farm.name,
        day=arrive.date(),
        arrive=arrive,
        made_at=now.astimezone(zone),
        groups=tuple(_groups(order)),
        left_for_next=tuple(_cow(line) for line in order.left_for_next[:MOST_LEFT]),
        prepare=tuple(_prepare(visit.farm)),
        cautions=(LATE_PREGNANT,),
        trimmer=visit.van.name if visit.van else "",
        rule_note=_rule_note(order),
        likely=_likely(visit, now),
    )


def _likely(visit: Visit, now: datetime) -> tuple[datetime, datetime] | None:
    stop = arrival_at(visit, now)
    return (stop.arrive.earliest, stop.arrive.latest) if stop and stop.arrive else None


def draft_for(visit: Visit, day: date) -> DraftOrder:
    """Cows in order of need on that day, by the rules; a fixed number of queries."""
    return draft_order(list(_candidates(visit, day)), day, visit.head_count)


def _candidates(visit: Visit, day: date) -> Iterator[DraftCandidate]:
    scope = Scope(visit.business_id)
    asked = {row.cow_id: row for row in AskedCow.objects.within(scope).filter(visit=visit)}
    rechecks = _recheck_words(scope, visit, day)
    last = dict(
        Trim.objects.within(scope)
        .filter(visit__farm_id=visit.farm_id)
        .values_list("cow_id")
        .annotate(last=Max("recorded_at"))
        .order_by()
    )
    for cow in Cow.objects.within(scope).on_farm().filter(farm_id=visit.farm_id):
        row = asked.get(cow.pk)
        words = rechecks.get(cow.pk, "")
        yield DraftCandidate(
            cow_id=cow.pk,
            number=cow.number,
            lame_words=_asked_words(row) if row and not words else "",
            recheck_words=words,
            is_heifer=cow.status == CowStatus.HEIFER,
            calved_on=cow.calved_on,
            calving_due=cow.calving_due,
            dry_off_due=cow.dry_off_due,
            last_trim=local_day(last[cow.pk], visit.business.zone) if cow.pk in last else None,
        )


def _asked_words(row: AskedCow) -> str:
    score = f" (walks {row.mobility_score} on {row.mobility_scale})" if row.mobility_score is not None else ""
    return row.why + score


def _recheck_words(scope: Scope, visit: Visit, day: date) -> dict[int, str]:
    rows = Recheck.objects.within(scope).open().filter(farm_id=visit.farm_id, due_from__lte=day)
    words: dict[int, list[str]] = {}
    for row in rows:
        words.setdefault(row.cow_id, []).append(f"{row.get_foot_display()}: {row.what}")
    return {cow: "; ".join(found) for cow, found in words.items()}


def _groups(order: DraftOrder) -> Iterator[DraftGroup]:
    for rank, lines in groupby(order.present, key=lambda line: line.rank):
        yield DraftGroup(NEEDS[rank], tuple(_cows(lines)))


def _cows(lines: Iterable[DraftLine]) -> Iterator[DraftCow]:
    return (_cow(line) for line in lines)


def _cow(line: DraftLine) -> DraftCow:
    return DraftCow(line.number, line.why, line.warning)


def _rule_note(order: DraftOrder) -> str:
    more = len(order.left_for_next) - MOST_LEFT
    return f"{RULE_NOTE} {more} more cows are left for later." if more > 0 else RULE_NOTE


def _prepare(farm: Farm) -> Iterator[str]:
    yield "Cows in a pen or behind a gate by the crush, on clean, dry ground, the list in this order."
    if farm.crush_place == CrushPlace.BROUGHT:
        yield "Room for van and crush on firm, level ground; the way in as agreed."
    yield "Water and hose at the place, for feet before and for washing down after."
    if farm.power != "none":
        yield f"Power: {farm.get_power_display()} within reach."

"""The cows to bring for a visit, as the values its draft list is drawn from."""

from collections.abc import Iterator
from datetime import datetime

from farms.domain.handling import CrushPlace
from farms.models import Farm
from trimops.paper.days import day_short_year
from trimops.paper.figures import counted
from visits.documents.draft_list_content import DraftCow, DraftGroup, DraftList, StruckCow
from visits.domain.cautions import LATE_PREGNANT
from visits.domain.draft_order import DraftLine
from visits.domain.visit_states import VisitReason
from visits.models import DraftChange, Visit
from visits.selectors.day_arrivals import arrival_at
from visits.selectors.draft_view import DraftView, draft_view
from visits.selectors.letterhead import letterhead_of

MOST_LEFT = 10


def draft_content(visit: Visit, now: datetime) -> DraftList:
    """The list for the visit's day, cut at the number of cows expected. The farm and business must be at hand."""
    zone, view = visit.business.zone, draft_view(visit, now)
    left = view.order.left_for_next
    return DraftList(
        letterhead=letterhead_of(visit.business),
        farm_name=visit.farm.name,
        day=view.day,
        arrive=visit.planned_start.astimezone(zone) if visit.planned_start else None,
        made_at=now.astimezone(zone),
        groups=tuple(DraftGroup(group.need.label, tuple(map(_cow, group.lines))) for group in view.groups),
        left_for_next=tuple(_cow(line) for line in left[:MOST_LEFT]),
        left_count=len(left),
        struck=tuple(_struck(change) for change in view.struck),
        prepare=tuple(_prepare(visit.farm)),
        cautions=(LATE_PREGNANT,),
        trimmer=visit.van.name if visit.van else "",
        rule_note=_rule_note(view),
        time_note=time_words(view),
        likely=_likely(visit, now),
    )


def time_words(view: DraftView) -> str:
    """What the list takes, and what the farm must know if there is no time for all that presses."""
    time, told = view.time, []
    if time.cows:
        told.append(f"About {_length(time.minutes)} for {counted(time.cows, 'cow')}.")
    if time.over:
        told.append(f"{counted(time.over, 'cow')} more than the time allows: the trimmer will ring.")
    elif time.is_unknown:
        told.append("That is longer than planned: the trimmer will ring.")
    if view.lame_left:
        lame = counted(view.lame_left, "lame cow is", "lame cows are")
        told.append(f"{lame} not on the list: tell us at once, they stand first among those left.")
    return " ".join(told)


def _length(minutes: int) -> str:
    hours, rest = divmod(minutes, 60)
    return f"{hours} h {rest:02d}" if hours else f"{rest} min"


def _likely(visit: Visit, now: datetime) -> tuple[datetime, datetime] | None:
    stop = arrival_at(visit, now)
    return (stop.arrive.earliest, stop.arrive.latest) if stop and stop.arrive else None


def _cow(line: DraftLine) -> DraftCow:
    return DraftCow(line.number, line.why, line.warning)


def _struck(change: DraftChange) -> StruckCow:
    return StruckCow(change.cow.number, change.why, str(change.by))


def _rule_note(view: DraftView) -> str:
    """By which rules the list was made, and since when."""
    using = view.using
    chosen = f", chosen {day_short_year(using.choice.changed_at.date())}" if using.choice else ""
    own = " with the farm's own days" if using.is_own else ""
    only = (
        ""
        if view.visit.reason == VisitReason.ROUTINE
        else " No routine visit, so only what presses is on it."
    )
    return (
        f"Rules: “{using.rule_set.name}”{own}{chosen}.{only} Lame cows first, then blocks and re-checks that are due "
        "(AHDB, article on the trim list); where each rule comes from stands on the farm's page of rules."
    )


def _prepare(farm: Farm) -> Iterator[str]:
    yield "Cows in a pen or behind a gate by the crush, on clean, dry ground, the list in this order."
    if farm.crush_place == CrushPlace.BROUGHT:
        yield "Room for van and crush on firm, level ground; the way in as agreed."
    yield "Water and hose at the place, for feet before and for washing down after."
    if farm.power != "none":
        yield f"Power: {farm.get_power_display()} within reach."

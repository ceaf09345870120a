"""What comes after a visit: the blocks on the farm's cows and who takes them off, what is the farm's to do, when we
come again."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from datetime import date
from zoneinfo import ZoneInfo

from django.db.models import Q

from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from trimops.paper.days import clock, day_plain, day_short
from visits.documents.visit_report_content import BlockLine, FarmTask
from visits.domain.feet import Claw, Foot
from visits.domain.visit_states import VisitState
from visits.models import Block, Recheck, Visit
from visits.selectors.visit_story import VisitStory

NOBODY_COMES = "no visit booked for it: take it off, or ring us"


def coming_visits(visit: Visit) -> list[Visit]:
    """The visits to the farm after this one, made since or still to come, in the order of their days."""
    rows = Visit.objects.within(Scope(visit.business_id)).filter(farm_id=visit.farm_id).exclude(pk=visit.pk)
    zone = visit.business.zone
    made_since = Q(state=VisitState.FINISHED.value, planned_start__gt=visit.finished_at or visit.changed_at)
    still_open = Q(state__in=[state.value for state in VisitState if state.is_open])
    return sorted(rows.filter(made_since | still_open), key=lambda v: (_latest_day(v, zone), v.pk))


def _latest_day(coming: Visit, zone: ZoneInfo) -> date:
    """The day of its hour, else the last day on which it is due."""
    if coming.planned_start is None:
        return coming.due_until
    return local_day(coming.planned_start, zone)


def block_lines(visit: Visit, day: date) -> tuple[BlockLine, ...]:
    """Every block that was on a cow of the farm at the end of that day, whoever put it on; three queries at most."""
    rows = Block.objects.within(Scope(visit.business_id)).filter(
        Q(off_on__isnull=True) | Q(off_on__gt=day),
        Q(cow__left_on__isnull=True) | Q(cow__left_on__gt=day),
        cow__farm_id=visit.farm_id,
        put_on__lte=day,
    )
    blocks = list(rows.select_related("cow"))
    seen_to = _seen_to(visit, blocks)
    return tuple(
        BlockLine(
            b.cow.number,
            Foot(b.foot),
            Claw(b.claw),
            b.get_kind_display(),
            b.put_on,
            b.off_due,
            _who(seen_to.get((b.cow_id, b.foot)), visit),
        )
        for b in blocks
    )


def _seen_to(visit: Visit, blocks: Sequence[Block]) -> dict[tuple[int, str], Visit]:
    """The visit at which each blocked foot is to be looked at again, as its re-check is booked."""
    ended = visit.finished_at or visit.changed_at
    rows = Recheck.objects.within(Scope(visit.business_id)).filter(
        cow_id__in={block.cow_id for block in blocks}, from_trim__recorded_at__lte=ended, visit__isnull=False
    )
    booked = rows.exclude(visit__state=VisitState.CALLED_OFF.value).exclude(visit__finished_at__lte=ended)
    ordered = booked.select_related("visit").order_by("from_trim__recorded_at", "pk")
    return {(row.cow_id, row.foot): row.visit for row in ordered if row.visit is not None}


def _who(other: Visit | None, visit: Visit) -> str:
    if other is None:
        return NOBODY_COMES
    if other.planned_start is None:
        return f"we come by {day_short(other.due_until)}, hour to be told"
    at = other.planned_start.astimezone(visit.business.zone)
    return f"we come {day_short(at.date())}, {clock(at)}"


def farm_tasks(story: VisitStory) -> tuple[FarmTask, ...]:
    """What falls to the farm: the vet, blocked cows kept on good ground, feet to be shown again by their days."""
    told = [row.trim.cow.number for row in story.referrals if row.told_whom]
    untold = [row.trim.cow.number for row in story.referrals if not row.told_whom]
    tasks = []
    if untold:
        tasks.append(FarmTask("Ring the vet today", None, _cows(untold)))
    if told:
        tasks.append(FarmTask("The vet was told: agree when she is seen", None, _cows(told)))
    if story.blocks:
        tasks.append(FarmTask("Keep on even, dry ground", None, _cows(b.cow.number for b in story.blocks)))
    by_day: dict[date, list[str]] = defaultdict(list)
    for row in story.rechecks:
        by_day[row.due_until].append(row.cow.number)
    tasks += [FarmTask("Bring again for the re-check", day, _cows(by_day[day])) for day in sorted(by_day)]
    return tuple(tasks)


def next_visit_words(visit: Visit, coming: Sequence[Visit]) -> str:
    """ "Tuesday 29 December, 09:40", or between which days; empty when none is asked for."""
    if not coming:
        return ""
    first = coming[0]
    if first.planned_start is not None:
        at = first.planned_start.astimezone(visit.business.zone)
        return f"{day_short(at.date())} {at.year}, {clock(at)}"
    if first.due_from == first.due_until:
        return f"by {day_plain(first.due_until)}, hour to be told"
    return f"between {day_plain(first.due_from)} and {day_plain(first.due_until)}, hour to be told"


def _cows(numbers: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(numbers))

"""Open re-checks become wanted visits: per farm as few as can be, each on days that fit all its cows."""

from datetime import date, datetime

from django.db import transaction

from farms.models import Farm
from trimops.kernel.scope import Scope
from visits.domain.gather_rechecks import GatheredRechecks, OpenRecheck, gather_rechecks
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import Recheck, Visit
from visits.services.ask_visit import CowWish, VisitWish, ask_visit
from visits.services.visit_change import keep_change


@transaction.atomic
def gather_farm_rechecks(*, farm: Farm, today: date, at: datetime) -> list[Visit]:
    """Wanted re-check visits of the farm brought in line with its open re-checks; safe to run again.

    Feet already promised to a visit that has its hour are left with it. The rest is gathered anew: wanted visits that
    this rule made before are used again, so that nothing doubles.
    """
    locked_farm = farm.locked()
    loose = list(_loose(locked_farm))
    groups = gather_rechecks([_as_value(item) for item in loose], today)
    spare = list(_own_wishes(locked_farm))
    visits = [_visit_for(group, locked_farm, loose, spare, at) for group in groups]
    for left_over in spare:
        _drop(left_over, at)
    return visits


def _loose(farm: Farm) -> list[Recheck]:
    """Open re-checks that no visit with an hour will see to."""
    rows = Recheck.objects.within(farm.scope).open().filter(farm=farm).select_related("cow", "visit")
    promised = {VisitState.PLANNED.value, VisitState.CONFIRMED.value, VisitState.UNDER_WAY.value}
    return [row for row in rows if row.visit is None or row.visit.state not in promised]


def _own_wishes(farm: Farm) -> list[Visit]:
    rows = Visit.objects.within(farm.scope).in_state(VisitState.WANTED).filter(farm=farm)
    return list(rows.filter(reason=VisitReason.RECHECK.value, asked_by=RULE).order_by("due_until", "id"))


RULE = "re-check rule"


def _as_value(row: Recheck) -> OpenRecheck:
    return OpenRecheck(row.pk, row.farm_id, row.due_from, row.due_until)


def _visit_for(
    group: GatheredRechecks, farm: Farm, loose: list[Recheck], spare: list[Visit], at: datetime
) -> Visit:
    members = [row for row in loose if row.pk in group.ids]
    wish = _wish(group, members)
    visit = _renew(spare.pop(0), wish, at) if spare else ask_visit(farm=farm, wish=wish, at=at, by=None)
    Recheck.objects.within(Scope(farm.business_id)).filter(pk__in=group.ids).update(visit=visit)
    return visit


def _wish(group: GatheredRechecks, members: list[Recheck]) -> VisitWish:
    by_cow: dict[int, CowWish] = {}
    for row in members:
        known = by_cow.get(row.cow_id)
        words = f"{row.get_foot_display()}: {row.what}"
        by_cow[row.cow_id] = CowWish(row.cow, f"{known.why}; {words}"[:200] if known else words[:200])
    return VisitWish(
        reason=VisitReason.RECHECK,
        asked_by=RULE,
        due_from=group.due_from,
        due_until=group.due_until,
        head_count=len(by_cow),
        corrective_count=len(by_cow),
        cows=tuple(by_cow.values()),
    )


def _renew(visit: Visit, wish: VisitWish, at: datetime) -> Visit:
    """The rule's own wanted visit with today's cows and days; nothing happens when they are the same."""
    asked = {row.cow_id: row.why for row in visit.asked_cows.within(visit.scope)}
    wanted = {wished.cow.pk: wished.why for wished in wish.cows}
    if asked == wanted and (visit.due_from, visit.due_until) == (wish.due_from, wish.due_until):
        return visit
    _drop(visit, at)
    return ask_visit(farm=visit.farm, wish=wish, at=at, by=None)


def _drop(visit: Visit, at: datetime) -> None:
    Recheck.objects.within(visit.scope).filter(visit=visit).update(visit=None)
    visit.called_off_at, visit.called_off_because = at, "gathered anew"
    keep_change(visit, VisitState.CALLED_OFF, at=at, by=None, note="gathered anew")

"""The farm says yes: a held hour becomes a confirmed visit."""

from collections.abc import Mapping
from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from visits.domain.mobility import MobilityScale
from visits.domain.visit_states import VisitReason
from visits.models import HeldCow, HeldHour, HeldState, Van, Visit
from visits.selectors.asked_visit import Asked
from visits.selectors.offer_again import AskedPlace, Standing, offer_again
from visits.services.ask_visit import CowWish, VisitWish, ask_visit
from visits.services.confirm_visit import confirm_visit
from visits.services.give_hours import give_hours
from visits.services.hold_offer import OfferIsGone
from visits.services.let_go_offer import held_now
from visits.services.lock_vans import lock_vans
from visits.services.plan_visit import plan_visit


@transaction.atomic
def take_offer(
    *, held: HeldHour, at: datetime, by: User, start: datetime | None = None, keeps_told: bool = False
) -> Visit:
    """Ask for the visit, plan it at its hour and confirm it; the visits that make room get their hours.

    `start` is another start within the span that the farm was told; without one it is the hour held. With
    `keeps_told` no visit whose farm knows its hour makes room. HourIsNotHeld when it has run out; OfferIsGone when
    the week has changed so that this start is not good any more.
    """
    vans = lock_vans(scope=held.scope)
    row = held_now(held, at)
    found = _still_good(row, start or row.start, at, keeps_told)
    if found is None:
        raise OfferIsGone("The week has changed so that this hour cannot be kept: look for another.")
    row.state, row.ended_at = HeldState.TAKEN.value, at
    row.save()
    visit = ask_visit(farm=row.farm, wish=_wish(row), at=at, by=by)
    # because: the room that was held is for this long, whatever the figures say by now
    visit.expected_minutes = row.minutes
    visit.save()
    give_hours(hours=found.others, vans=vans, note=f"makes room for {row.farm}", at=at, by=by)
    visit = _in_the_diary(visit, vans, row, found, at, by)
    row.visit = visit
    row.save()
    return visit


def _still_good(row: HeldHour, start: datetime, at: datetime, keeps_told: bool) -> Standing | None:
    """As the week stands now if that will do, else with the visit moved that was to move for it."""
    if not row.first_start <= start <= row.last_start:
        raise OfferIsGone("This is outside the hours that the farm was told: choose one within them.")
    what = VisitReason(row.reason), row.head_count, row.minutes, row.due_from, row.due_until
    asked = Asked(row.farm, *what, keeps_told)
    plain = offer_again(asked, AskedPlace(row.van_id, start, start), at, ignore=row)
    if plain is not None or row.moved_visit_id is None:
        return plain
    return offer_again(asked, AskedPlace(row.van_id, start, start, row.moved_visit_id), at, ignore=row)


def _in_the_diary(
    visit: Visit, vans: Mapping[int, Van], row: HeldHour, found: Standing, at: datetime, by: User
) -> Visit:
    planned = plan_visit(visit=visit, van=vans[row.van_id], start=found.start, at=at, by=by)
    return confirm_visit(visit=planned, at=at, by=by, note="an hour that was held")


def _wish(row: HeldHour) -> VisitWish:
    return VisitWish(
        reason=VisitReason(row.reason),
        asked_by=row.asked_by,
        due_from=row.due_from,
        due_until=row.due_until,
        head_count=row.head_count,
        corrective_count=row.corrective_count,
        mobility_scale=MobilityScale(row.mobility_scale) if row.mobility_scale else None,
        mobility_score=row.mobility_score,
        note=row.note,
        cows=tuple(
            _cow_wish(named)
            for named in HeldCow.objects.within(row.scope).filter(held=row).select_related("cow")
        ),
    )


def _cow_wish(named: HeldCow) -> CowWish:
    scale = MobilityScale(named.mobility_scale) if named.mobility_scale else None
    return CowWish(named.cow, named.why, scale, named.mobility_score, named.lame_since)

"""A farm client takes the hour that is held for them."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import Membership, User
from trimops.accounts.roles import Role
from trimops.portal.services.tell_business import tell_business
from visits.domain.routine_due import ASKED_BY_RULE
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import HeldHour, Visit
from visits.services.call_off_visit import call_off_visit
from visits.services.hold_offer import OfferIsGone
from visits.services.plan_visit import VanIsBusy
from visits.services.take_offer import take_offer


@transaction.atomic
def take_for_client(*, held: HeldHour, start: datetime, at: datetime, by: User) -> Visit:
    """The visit, confirmed. Where a farm client chose the hour, no visit that was told its hour moves for it.

    A routine visit that only the rule wanted, without hour or change, is called off: this one is in its place.
    The business hears of it.
    """
    try:
        visit = take_offer(held=held, start=start, at=at, by=by, keeps_told=_was_chosen_by_a_farm(held))
    except VanIsBusy:
        # because: it says at whose farm the van is, and that is nobody's business but the trimmer's
        raise OfferIsGone(
            "The week has changed so that this hour cannot be kept: look for another."
        ) from None
    if visit.reason == VisitReason.ROUTINE.value:
        wanted = Visit.objects.within(held.scope).in_state(VisitState.WANTED).filter(farm_id=held.farm_id)
        wanted = wanted.filter(reason=VisitReason.ROUTINE.value, asked_by=ASKED_BY_RULE)
        for other in wanted.filter(asked_cows__isnull=True, draft_changes__isnull=True):
            call_off_visit(visit=other, because="The farm took another hour itself.", at=at, by=by)
    tell_business(visit=visit, at=at)
    return visit


def _was_chosen_by_a_farm(held: HeldHour) -> bool:
    """What the office held was settled by the office, moves and all."""
    return Membership.objects.filter(business_id=held.business_id, user=held.by, role=Role.FARM).exists()

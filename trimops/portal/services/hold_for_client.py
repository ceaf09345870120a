"""A farm client chooses one of the hours they were offered."""

from datetime import datetime

from django.db import transaction

from farms.models import Farm
from trimops.accounts.models import User
from visits.models import HeldHour
from visits.selectors.client_offers import offered_place
from visits.selectors.offer_again import AskedPlace
from visits.services.ask_visit import VisitWish
from visits.services.hold_offer import OfferIsGone, OfferToHold, asked_for, hold_offer
from visits.services.let_go_offer import let_go_offer
from visits.services.lock_vans import lock_vans


@transaction.atomic
def hold_for_client(*, farm: Farm, wish: VisitWish, told: AskedPlace, at: datetime, by: User) -> HeldHour:
    """Hold it; no visit that was told its hour moves for it. OfferIsGone when it is not free any more.

    A person holds one hour at a farm: the one held before is let go, so that nobody keeps the week for themselves.
    """
    lock_vans(scope=farm.scope)
    for before in HeldHour.objects.within(farm.scope).in_force(at).filter(farm=farm, by=by):
        let_go_offer(held=before, at=at)
    place = offered_place(asked_for(farm, wish, keeps_told=True), told, at)
    if place is None:
        raise OfferIsGone("This hour is not free any more: somebody was quicker. Choose another.")
    return hold_offer(farm=farm, offer=OfferToHold(wish, place, keeps_told=True), at=at, by=by)

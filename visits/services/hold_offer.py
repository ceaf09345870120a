"""An hour that was offered is held for a farm while it makes up its mind."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from django.db import transaction

from farms.models import Farm
from farms.services.refuse_erased import refuse_erased
from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from trimops.tenancy.same_business import require_same_business
from visits.models import HeldCow, HeldHour
from visits.selectors.asked_visit import Asked
from visits.selectors.business_figures import figures_of
from visits.selectors.expected_length import expected_at
from visits.selectors.offer_again import AskedPlace, Standing, offer_again
from visits.services.ask_visit import CowWish, VisitWish, check_wish, naming_of
from visits.services.expire_offers import expire_offers
from visits.services.lock_vans import lock_vans


class OfferIsGone(RuleBroken):
    """Somebody was quicker, or the week has changed."""

    code = "offer_is_gone"


@dataclass(frozen=True)
class OfferToHold:
    """What the farm asked for, and the place that it was offered; `keeps_told` as it was looked for."""

    wish: VisitWish
    place: AskedPlace
    keeps_told: bool = False


@transaction.atomic
def hold_offer(*, farm: Farm, offer: OfferToHold, at: datetime, by: User) -> HeldHour:
    """Hold the place for as long as the business's figures say. OfferIsGone when it is not free any more,
    WishMakesNoSense where the wish is none.

    The place is looked at again with all vans locked, so that of two who ask at once one is refused.
    """
    require_same_business(farm, *(wished.cow for wished in offer.wish.cows))
    refuse_erased(farm=farm)
    vans = lock_vans(scope=farm.scope)
    expire_offers(scope=farm.scope, at=at)
    asked = asked_for(farm, offer.wish, offer.keeps_told)
    place = offer.place
    found = offer_again(asked, place, at) if place.van in vans else None
    if found is None:
        raise OfferIsGone("This hour is not free any more: somebody may have been quicker. Look for another.")
    held = _row(farm, offer, found, at, by)
    held.minutes, held.van = asked.minutes, vans[place.van]
    moved = next((hour for hour in found.others if hour.visit.pk == place.moved), None)
    if moved is not None:
        held.moved_visit, held.moved_van, held.moved_start = moved.visit, vans[moved.van], moved.start
    require_same_business(farm, held.van)
    held.full_clean()
    held.save()
    for wished in offer.wish.cows:
        _name_cow(held, wished)
    return held


def asked_for(farm: Farm, wish: VisitWish, keeps_told: bool = False) -> Asked:
    """The wish as finding room for it needs it, with the minutes that it will take. WishMakesNoSense."""
    check_wish(farm, wish)
    length = expected_at(farm, head_count=wish.head_count, corrective_count=wish.corrective_count)
    days = wish.due_from, wish.due_until
    return Asked(farm, wish.reason, wish.head_count, length.minutes, *days, keeps_told)


def _row(farm: Farm, offer: OfferToHold, found: Standing, at: datetime, by: User) -> HeldHour:
    wish = offer.wish
    return HeldHour(
        business_id=farm.business_id,
        farm=farm,
        reason=wish.reason.value,
        asked_by=wish.asked_by,
        due_from=wish.due_from,
        due_until=wish.due_until,
        head_count=wish.head_count,
        corrective_count=wish.corrective_count,
        mobility_scale=wish.mobility_scale.value if wish.mobility_scale else "",
        mobility_score=wish.mobility_score,
        note=wish.note,
        first_start=found.first,
        last_start=found.last,
        start=found.start,
        held_at=at,
        until=at + timedelta(minutes=figures_of(farm.scope).planning.hold_minutes),
        by=by,
    )


def _name_cow(held: HeldHour, wished: CowWish) -> None:
    named = HeldCow(held=held, **naming_of(wished))
    named.full_clean()
    named.save()

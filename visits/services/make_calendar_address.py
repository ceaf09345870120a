"""Secret addresses of calendar feeds."""

from dataclasses import dataclass
from datetime import datetime

from django.db import transaction

from farms.models import Farm
from trimops.accounts.models import Business, Membership, User
from trimops.kernel.errors import RuleBroken
from trimops.kernel.secret_link import hash_of, new_secret
from trimops.tenancy.same_business import require_same_business
from visits.models import CalendarAddress, Van

Shown = Van | Farm | User


class NoTrimmerHere(RuleBroken):
    """Whose visits were asked for has no place in the business."""

    code = "no_trimmer_here"


@dataclass(frozen=True)
class FeedWish:
    """Whose phone it is for, and what it shows: a van's visits, a farm's, those of a trimmer's vans, or all (None).

    `alarm_minutes` before a visit it rings; `shows_wishes`: also what has no hour, which a farm's never does.
    """

    name: str
    shows: Shown | None = None
    alarm_minutes: int | None = None
    shows_wishes: bool = False


@dataclass(frozen=True)
class NewAddress:
    """The stored row and the secret, which is shown once and never stored."""

    row: CalendarAddress
    secret: str


@transaction.atomic
def make_calendar_address(*, business: Business, wish: FeedWish, at: datetime, by: User) -> NewAddress:
    """An address that nobody guesses: 256 bits of chance. NoTrimmerHere."""
    secret, shows = new_secret(), wish.shows
    row = CalendarAddress(
        business=business, name=wish.name, secret_hash=hash_of(secret), made_at=at, made_by=by
    )
    row.van = shows if isinstance(shows, Van) else None
    row.farm = shows if isinstance(shows, Farm) else None
    row.trimmer = shows if isinstance(shows, User) else None
    row.alarm_minutes = wish.alarm_minutes
    row.shows_wishes = wish.shows_wishes and row.farm is None
    require_same_business(row, row.van, row.farm)
    _refuse_stranger(business, row.trimmer)
    row.full_clean()
    row.save()
    return NewAddress(row, secret)


def _refuse_stranger(business: Business, trimmer: User | None) -> None:
    if trimmer is not None and not Membership.objects.filter(business=business, user=trimmer).exists():
        raise NoTrimmerHere("This person is not in the business: choose somebody who drives a van.")

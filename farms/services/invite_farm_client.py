"""Somebody of a farm is asked in, to see that farm and no other."""

from dataclasses import dataclass
from datetime import datetime

from django.db import transaction

from farms.models import Farm, FarmAccess
from farms.services.give_farm_rights import give_farm_rights
from farms.services.refuse_erased import refuse_erased
from trimops.accounts.models import Membership, User
from trimops.accounts.roles import FarmRight, Role
from trimops.accounts.services.invite_person import Guest, invite_person
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope


class WorksHereAlready(RuleBroken):
    """The person is staff of the business and sees every farm already."""

    code = "works_here_already"


@dataclass(frozen=True)
class FarmGuest:
    """Who of the farm is asked in, and with which rights there; None: what is usual, or as they were."""

    email: str
    name: str
    rights: frozenset[FarmRight] | None = None


@transaction.atomic
def invite_farm_client(*, farm: Farm, guest: FarmGuest, at: datetime, by: User) -> Membership:
    """A membership as farm client with access to `farm`. A client of another farm of the business gets this one too."""
    refuse_erased(farm=farm)
    known = Membership.objects.filter(
        business_id=farm.business_id, user__email=guest.email.strip().lower()
    ).first()
    if known is not None and known.ended_at is None and known.role != Role.FARM:
        raise WorksHereAlready(f"{known.user} works here and sees every farm already.")
    rows = FarmAccess.objects.within(Scope(farm.business_id))
    if known is not None and known.ended_at is not None:
        rows.filter(
            membership=known
        ).delete()  # who comes back sees the farm they come back to, not those of then
    if known is None or not known.is_current:
        known = invite_person(
            business=farm.business, guest=Guest(guest.email, guest.name, Role.FARM), at=at, by=by
        )
    access, _ = rows.get_or_create(business_id=farm.business_id, membership=known, farm=farm)
    if guest.rights is not None:
        give_farm_rights(access=access, rights=guest.rights)
    return known

"""A business begins: its row, and its first owner."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import Business, Membership, User
from trimops.accounts.roles import Role
from trimops.accounts.services.invite_person import Guest, invite_person


@transaction.atomic
def open_business(*, business: Business, owner: Guest, at: datetime, by: User | None = None) -> Membership:
    """Keep the business and invite its owner (who invites everybody else). ValidationError names what to mend."""
    business.full_clean()
    business.save()
    guest = Guest(owner.email, owner.name, Role.OWNER)
    return invite_person(business=business, guest=guest, at=at, by=by)

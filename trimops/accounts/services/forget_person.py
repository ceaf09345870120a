"""A person who was let in for one farm alone is forgotten with it."""

from datetime import datetime

from allauth.account.models import EmailAddress
from django.contrib.sessions.models import Session
from django.db import transaction

from trimops.accounts.models import Membership, User
from trimops.kernel.scope import Scope
from trimops.outbox.services.forget_outgoing import forget_outgoing


@transaction.atomic
def forget_person(*, membership: Membership, at: datetime) -> bool:
    """End the membership; where the person has no place in any other business, take name and address out too.

    True when the person was forgotten. What was sent to them is dropped. What they did stays, by somebody without a
    name.
    """
    row = Membership.objects.select_for_update().select_related("user").get(pk=membership.pk)
    row.ended_at = row.ended_at or at
    row.save()
    user = row.user
    forget_outgoing(scope=Scope(row.business_id), addresses=[user.email])
    if user.is_staff or Membership.objects.filter(user=user).exclude(pk=row.pk).exists():
        return False
    EmailAddress.objects.filter(user=user).delete()
    _end_sessions(user)
    user.name, user.email = f"Erased person {user.pk}", f"erased-{user.pk}@erased.invalid"
    user.is_active = False
    user.set_unusable_password()
    user.full_clean(exclude=["password"])
    user.save()
    return True


def _end_sessions(user: User) -> None:
    """A session keeps the address that its person signed in with, packed so that no search finds it."""
    for session in Session.objects.iterator(chunk_size=500):
        if session.get_decoded().get("_auth_user_id") == str(user.pk):
            session.delete()

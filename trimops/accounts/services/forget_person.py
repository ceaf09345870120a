"""A person who was let in for one farm alone is forgotten with it."""

from datetime import datetime

from allauth.account.models import EmailAddress
from allauth.mfa.models import Authenticator
from django.db import transaction

from trimops.accounts.models import ApiToken, Membership
from trimops.accounts.services.end_sessions import end_sessions
from trimops.accounts.services.revoke_token import revoke_tokens_of
from trimops.audit.services.blot_audit import blot_audit
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
    revoke_tokens_of(membership=row, at=at)
    user = row.user
    forget_outgoing(scope=Scope(row.business_id), addresses=[user.email])
    if user.is_staff or Membership.objects.filter(user=user).exclude(pk=row.pk).exists():
        return False
    EmailAddress.objects.filter(user=user).delete()
    Authenticator.objects.filter(user=user).delete()
    end_sessions(user=user)
    # because: a program may be called by whose it is, and was last seen from where they live
    ApiToken.objects.filter(user=user).update(name="Erased program", last_used_from=None)
    user.name, user.email = f"Erased person {user.pk}", f"erased-{user.pk}@erased.invalid"
    user.is_active = False
    user.set_unusable_password()
    user.full_clean(exclude=["password"])
    user.save()
    blot_audit(scope=Scope(row.business_id), roots=[f"accounts.membership:{row.pk}"], at=at)
    return True

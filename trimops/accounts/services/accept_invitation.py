"""A person takes up an invitation."""

from datetime import datetime

from django.contrib.auth.password_validation import validate_password
from django.db import transaction

from trimops.accounts.models import Membership
from trimops.accounts.services.invite_person import InvitationSpent


@transaction.atomic
def accept_invitation(*, membership: Membership, password: str, at: datetime) -> Membership:
    """Join the business; a person without a password gets this one.

    For a person who has one, `password` must be theirs (ValidationError from Django's validators for a weak new
    one; InvitationSpent when the given one is wrong).
    """
    row = Membership.objects.select_for_update().select_related("user").get(pk=membership.pk)
    user = row.user
    if row.ended_at is not None:
        raise InvitationSpent("This invitation has been withdrawn: ask for a new one.")
    if row.joined_at is not None:
        raise InvitationSpent("This invitation has been used: sign in.")
    if user.has_usable_password():
        if not user.check_password(password):
            raise InvitationSpent("You have an account already: give its password, or reset it first.")
    else:
        validate_password(password, user)
        user.set_password(password)
        user.save()
    row.joined_at = at
    row.save()
    return row

"""A person is asked into a business by mail."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from django.conf import settings
from django.core import signing
from django.core.exceptions import ValidationError
from django.db import IntegrityError, transaction

from trimops.accounts.models import Business, Membership, User
from trimops.accounts.roles import Role
from trimops.kernel.errors import RuleBroken
from trimops.outbox.domain.outgoing_states import SECRET_PLACE, Channel, Topic
from trimops.outbox.services.put_out import Message, put_out

SALT = "trimops.invitation"


class AlreadyAMember(RuleBroken):
    """The person is in the business already."""

    code = "already_a_member"


class InvitationSpent(RuleBroken):
    """The link is used up, too old, withdrawn or broken."""

    code = "invitation_spent"


@dataclass(frozen=True)
class Guest:
    """Who is invited, and as what."""

    email: str
    name: str
    role: Role


@transaction.atomic
def invite_person(*, business: Business, guest: Guest, at: datetime, by: User | None) -> Membership:
    """A membership not yet taken up. Inviting again before they came renews the link (the old one dies).

    The person is locked, so that of two who invite the same address at once the second renews what the first made.
    """
    user = _locked_person(guest)
    known = Membership.objects.select_for_update().filter(business=business, user=user).first()
    if known is not None and known.is_current:
        raise AlreadyAMember(f"{user} is in {business} already, as {known.get_role_display().lower()}.")
    membership = known or Membership(business=business, user=user)
    membership.role, membership.invited_at, membership.invited_by = guest.role.value, at, by
    membership.joined_at = membership.ended_at = None
    membership.full_clean()
    membership.save()
    return membership


def _locked_person(guest: Guest) -> User:
    """Who has that address; a person of that name where nobody has."""
    email = guest.email.strip().lower()
    known = User.objects.select_for_update().filter(email=email)
    if found := known.first():
        return found
    try:
        with transaction.atomic():
            return User.objects.create_user(email, guest.name)
    except (IntegrityError, ValidationError):
        # because: somebody may have made the same person at the same moment; else the address is none
        if found := known.first():
            return found
        raise


def invitation_token(membership: Membership) -> str:
    """What the link carries: signed, and tied to this very invitation."""
    return signing.dumps({"m": membership.pk, "at": membership.invited_at.isoformat()}, salt=SALT)


@transaction.atomic
def mail_invitation(*, membership: Membership, address: str, at: datetime) -> None:
    """Send the link `address` to the person invited, once the invitation is committed."""
    business, user = membership.business, membership.user
    life = timedelta(days=settings.INVITATION_DAYS)
    text = (
        f"Hello {user.name},\n\n{membership.invited_by or business} asks you into {business} on trimops, "
        f"as {membership.get_role_display().lower()}.\n\nTo come in, open this address within "
        f"{settings.INVITATION_DAYS} days and choose a password:\n\n{SECRET_PLACE}\n\n"
        "If you did not expect this, do nothing: without the address nobody can come in.\n"
    )
    message = Message(
        channel=Channel.MAIL,
        topic=Topic.SIGN_IN,
        address=user.email,
        subject=f"Your place at {business}",
        body=text,
        secret=address,
        worthless_after=at + life,
    )
    put_out(business_id=business.pk, message=message, at=at, by=membership.invited_by)


def membership_of_token(token: str) -> Membership:
    """The open invitation a link stands for. InvitationSpent when it cannot be taken up any more."""
    try:
        said = signing.loads(token, salt=SALT, max_age=settings.INVITATION_DAYS * 86_400)
        membership = Membership.objects.select_related("user", "business").get(pk=said["m"])
    except (signing.BadSignature, Membership.DoesNotExist, KeyError, TypeError):
        raise InvitationSpent("This invitation is too old or broken: ask for a new one.") from None
    fresh = said["at"] == membership.invited_at.isoformat()
    if not fresh or membership.joined_at is not None or membership.ended_at is not None:
        raise InvitationSpent("This invitation has been used or withdrawn: sign in, or ask for a new one.")
    return membership

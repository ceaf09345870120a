"""A link to sign in goes to a person of a farm."""

from collections.abc import Callable
from datetime import datetime, timedelta

from django.db import transaction

from farms.selectors.seat import memberships_of
from trimops.accounts.models import Membership, User
from trimops.accounts.roles import Role
from trimops.accounts.services.invite_person import invitation_token, mail_invitation
from trimops.outbox.domain.outgoing_states import SECRET_PLACE, Channel, Topic
from trimops.outbox.services.put_out import Message, put_out
from trimops.portal.selectors.link_readers import may_come_by_link
from trimops.portal.services.make_link import LinkKind, make_link


@transaction.atomic
def mail_link(
    *,
    email: str,
    mark: str,
    address_of: Callable[[str], str],
    invitation_at: Callable[[str], str],
    at: datetime,
) -> User | None:
    """Mail the address of a new secret, if this is somebody who may come in by link; else nothing, and None.

    It opens in the browser that bears `mark` alone.

    Who was asked in by a farm's trimmer and has not come yet gets that invitation once more. Nothing is sent while the
    page waits: neither a failure nor the time it takes tells a stranger that there was a mail to send.
    """
    user = User.objects.filter(email=email.strip().lower(), is_active=True).first()
    if user is None:
        return None
    if not may_come_by_link(user):
        return _invited_again(user, invitation_at, at)
    message = Message(
        channel=Channel.MAIL,
        topic=Topic.SIGN_IN,
        address=user.email,
        subject="Your link to your farm",
        body=_text(user),
        secret=address_of(make_link(user=user, kind=LinkKind.ASKED, mark=mark)),
        worthless_after=at + timedelta(seconds=LinkKind.ASKED.seconds),
    )
    put_out(business_id=memberships_of(user)[0].business_id, message=message, at=at)
    return user


def _text(user: User) -> str:
    return (
        f"Hello {user.name},\n\nthis address signs you in to your farm, once, within the next hour:\n\n"
        f"{SECRET_PLACE}\n\n"
        "Open it on the device and in the browser where you asked for it. If your mail opens it elsewhere, copy it "
        "into that browser, or ask for a new one from where it opened.\n\n"
        "If you did not ask for it, do nothing: nobody comes in without it.\n"
    )


def _invited_again(user: User, invitation_at: Callable[[str], str], at: datetime) -> User | None:
    waiting = Membership.objects.filter(
        user=user, joined_at__isnull=True, ended_at__isnull=True, role=Role.FARM
    )
    membership = waiting.select_related("user", "business", "invited_by").order_by("-invited_at").first()
    if membership is None or memberships_of(user):
        return None
    mail_invitation(membership=membership, address=invitation_at(invitation_token(membership)), at=at)
    return user

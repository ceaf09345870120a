"""A link to sign in goes to a person of a farm."""

import threading
from collections.abc import Callable
from functools import partial

from django.conf import settings
from django.core.mail import EmailMessage
from django.db import transaction

from farms.selectors.seat import memberships_of
from trimops.accounts.models import Membership, User
from trimops.accounts.roles import Role
from trimops.accounts.services.invite_person import invitation_token, mail_invitation
from trimops.portal.selectors.link_readers import may_come_by_link
from trimops.portal.services.make_link import LinkKind, make_link


def mail_link(
    *, email: str, address_of: Callable[[str], str], invitation_at: Callable[[str], str]
) -> User | None:
    """Mail the address of a new secret, if this is somebody who may come in by link; else nothing, and None.

    Who was asked in by a farm's trimmer and has not come yet gets that invitation once more.
    """
    user = User.objects.filter(email=email.strip().lower(), is_active=True).first()
    if user is None:
        return None
    if not may_come_by_link(user):
        return _invited_again(user, invitation_at)
    address = address_of(make_link(user=user, kind=LinkKind.ASKED))
    text = (
        f"Hello {user.name},\n\nthis address signs you in to your farm, once, within the next hour:\n\n{address}\n\n"
        "If you did not ask for it, do nothing: nobody comes in without it.\n"
    )
    mail = EmailMessage("Your link to your farm", text, None, [user.email])
    transaction.on_commit(partial(_send_beside, mail), robust=True)
    return user


def _send_beside(mail: EmailMessage) -> None:
    """Beside the answer: neither a failure nor the time it takes tells a stranger that there was a mail to send."""
    if settings.JOBS_RUN_APART:
        threading.Thread(target=mail.send).start()
    else:
        mail.send()


def _invited_again(user: User, invitation_at: Callable[[str], str]) -> User | None:
    waiting = Membership.objects.filter(
        user=user, joined_at__isnull=True, ended_at__isnull=True, role=Role.FARM
    )
    membership = waiting.select_related("user", "business", "invited_by").order_by("-invited_at").first()
    if membership is None or memberships_of(user):
        return None
    mail_invitation(membership=membership, address=invitation_at(invitation_token(membership)))
    return user

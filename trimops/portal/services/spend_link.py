"""Somebody comes in by a link."""

from datetime import datetime

from django.db import transaction
from sesame.utils import get_user

from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from trimops.portal.selectors.link_readers import may_come_by_link
from trimops.portal.services.make_link import LinkKind, scope_of


class LinkSpent(RuleBroken):
    """The link was used, is too old, is broken, or was asked for in another browser."""

    code = "link_spent"


def owner_of_link(secret: str, mark: str = "") -> User | None:
    """Whom the link lets in if it is still good in the browser that bears `mark`; nothing is changed."""
    for kind in LinkKind if mark else (LinkKind.TOLD,):
        scope = scope_of(kind, mark)
        found = get_user(secret, scope=scope, max_age=kind.seconds, update_last_login=False)
        if isinstance(found, User) and may_come_by_link(found):
            return found
    return None


@transaction.atomic
def spend_link(*, secret: str, at: datetime, mark: str = "") -> User:
    """The person, and the link is worth nothing any more. LinkSpent when it was not good."""
    claimed = owner_of_link(secret, mark)
    if claimed is not None:
        # because: of two who press at the same moment the second finds the sign-in of the first
        User.objects.select_for_update().get(pk=claimed.pk)
        claimed = owner_of_link(secret, mark)
    if claimed is None:
        raise LinkSpent(
            "This link was used already, is too old, or was asked for elsewhere: have a new one sent."
        )
    claimed.last_login = at
    claimed.save(update_fields=["last_login"])
    return claimed

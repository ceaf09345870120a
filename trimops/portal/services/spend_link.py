"""Somebody comes in by a link."""

from datetime import datetime

from django.db import transaction
from sesame.utils import get_user

from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from trimops.portal.selectors.link_readers import may_come_by_link
from trimops.portal.services.make_link import LinkKind


class LinkSpent(RuleBroken):
    """The link was used, is too old or is broken."""

    code = "link_spent"


def owner_of_link(secret: str) -> User | None:
    """Whom the link lets in if it is still good; nothing is changed."""
    for kind in LinkKind:
        found = get_user(secret, scope=kind.value, max_age=kind.seconds, update_last_login=False)
        if isinstance(found, User) and may_come_by_link(found):
            return found
    return None


@transaction.atomic
def spend_link(*, secret: str, at: datetime) -> User:
    """The person, and the link is worth nothing any more. LinkSpent when it was not good."""
    claimed = owner_of_link(secret)
    if claimed is not None:
        # because: of two who press at the same moment the second finds the sign-in of the first
        User.objects.select_for_update().get(pk=claimed.pk)
        claimed = owner_of_link(secret)
    if claimed is None:
        raise LinkSpent("This link was used already or is too old: have a new one sent.")
    claimed.last_login = at
    claimed.save(update_fields=["last_login"])
    return claimed

"""The secret of a link that signs one person of a farm in, once."""

from enum import StrEnum

from sesame.utils import get_token

from trimops.accounts.models import User

HOUR = 3600


class LinkKind(StrEnum):
    """What a link was sent for, and how long it may lie in a mailbox."""

    ASKED = "asked"
    TOLD = "told"

    @property
    def seconds(self) -> int:
        return {LinkKind.ASKED: HOUR, LinkKind.TOLD: 14 * 24 * HOUR}[self]


def make_link(*, user: User, kind: LinkKind) -> str:
    """The secret; the person's next sign-in, by whatever way, and a new password make it worthless."""
    secret: str = get_token(user, scope=kind.value)
    return secret

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


def make_link(*, user: User, kind: LinkKind, mark: str = "") -> str:
    """The secret; the person's next sign-in, by whatever way, and a new password make it worthless.

    One that was ASKED for is good for that asking alone, of which the browser bears the `mark` (ASVS 6.6.2).
    """
    secret: str = get_token(user, scope=scope_of(kind, mark))
    return secret


def scope_of(kind: LinkKind, mark: str) -> str:
    """What the signature is made over besides the person. ValueError for an asking without a mark."""
    if kind is LinkKind.TOLD:
        return kind.value
    if not mark:
        raise ValueError("A link that was asked for belongs to a browser.")
    return f"{kind.value}:{mark}"

"""Who is asking, for which business, in which part: put on each request by the middleware."""

from dataclasses import dataclass

from django.http import HttpRequest

from trimops.accounts.models import Business, Membership, User
from trimops.accounts.roles import FarmRight, Role
from trimops.kernel.scope import Scope


@dataclass(frozen=True)
class Seat:
    """A person in one business, with the scope of rows that their part lets them see.

    `rights` are what a farm client may do at the farm of the scope; staff hold none and may do all of it.
    """

    user: User
    membership: Membership
    business: Business
    scope: Scope
    rights: frozenset[FarmRight] = frozenset()

    @property
    def role(self) -> Role:
        return Role(self.membership.role)

    def may(self, right: FarmRight) -> bool:
        """Whether this person has the right at the farm they see."""
        return not self.scope.is_farm_client or right in self.rights


class SeatedRequest(HttpRequest):
    """A request whose asker has a seat. Pages below `ScopedPage` may rely on it."""

    seat: Seat


def seat_of(request: HttpRequest) -> Seat | None:
    """The seat that the middleware found, None for a stranger or a person without a business."""
    found = getattr(request, "seat", None)
    return found if isinstance(found, Seat) else None

"""Who is asking, for which business, in which part: put on each request by the middleware."""

from dataclasses import dataclass

from django.http import HttpRequest

from trimops.accounts.actions import MAY, Action
from trimops.accounts.models import Business, Membership, User
from trimops.accounts.roles import FarmRight, Role
from trimops.kernel.scope import Scope


@dataclass(frozen=True)
class Seat:
    """A person in one business, with the scope of rows that their part lets them see.

    `rights` are what a farm client may do at the farm of the scope; staff hold none and may do all of it.
    `token_scopes` are the actions that the token in their hand names; None where the person signed in themselves.
    """

    user: User
    membership: Membership
    business: Business
    scope: Scope
    rights: frozenset[FarmRight] = frozenset()
    token_scopes: frozenset[Action] | None = None

    @property
    def role(self) -> Role:
        return Role(self.membership.role)

    def may(self, right: FarmRight) -> bool:
        """Whether this person has the right at the farm they see."""
        return not self.scope.is_farm_client or right in self.rights

    def allows(self, action: Action | None) -> bool:
        """The one place at which it is decided who may do what. None is what nobody may."""
        if action is None or not self._is_of(action):
            return False
        right = MAY[action].right
        return right is None or self.may(right)

    def lacks(self, action: Action | None) -> FarmRight | None:
        """The right that alone is missing; None where nothing is, or more than that."""
        if action is None or not self._is_of(action) or self.allows(action):
            return None
        return MAY[action].right

    def _is_of(self, action: Action) -> bool:
        is_in_scope = self.token_scopes is None or action in self.token_scopes
        return is_in_scope and self.role in MAY[action].roles


class SeatedRequest(HttpRequest):
    """A request whose asker has a seat. Pages below `ScopedPage` may rely on it."""

    seat: Seat


def seat_of(request: HttpRequest) -> Seat | None:
    """The seat that the middleware found, None for a stranger or a person without a business."""
    found = getattr(request, "seat", None)
    return found if isinstance(found, Seat) else None

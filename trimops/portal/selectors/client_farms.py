"""The farms that a farm client may sit at."""

from farms.models import FarmAccess
from farms.selectors.seat import farms_open_to, memberships_of
from trimops.accounts.models import User


def farms_of(user: User) -> list[FarmAccess]:
    """Every farm open to the person as its client, of each business they are a client of."""
    return [access for membership in memberships_of(user) for access in farms_open_to(membership)]

"""Who may come in by a link from a mail."""

from farms.selectors.seat import memberships_of
from trimops.accounts.models import User
from trimops.accounts.roles import Role


def may_come_by_link(user: User) -> bool:
    """People of farms and nobody else: whoever works for a business signs in with a password."""
    roles = {membership.role for membership in memberships_of(user)}
    return roles == {Role.FARM}

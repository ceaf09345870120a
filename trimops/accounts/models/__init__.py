from trimops.accounts.models.business import Business
from trimops.accounts.models.membership import Membership
from trimops.accounts.models.user import User

__all__ = ["Business", "Membership", "User"]

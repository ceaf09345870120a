from trimops.accounts.models.api_token import ApiToken
from trimops.accounts.models.business import Business
from trimops.accounts.models.membership import Membership
from trimops.accounts.models.user import User

__all__ = ["ApiToken", "Business", "Membership", "User"]

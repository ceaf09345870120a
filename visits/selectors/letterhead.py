"""The business as its papers name it."""

from trimops.accounts.models import Business
from trimops.paper.letterhead import Letterhead


def letterhead_of(business: Business) -> Letterhead:
    """Name, address line by line, telephone and e-mail."""
    return Letterhead(business.name, tuple(business.address.splitlines()), business.phone, business.email)

"""Which of a farm's links for its vet still stand."""

from farms.models import FarmAccess, VetPass
from trimops.accounts.models import Membership
from trimops.accounts.roles import Role


def is_still_given(row: VetPass) -> bool:
    """A link that a person of the farm made ends with their right to make it; who left could else keep a way in.

    One that the business made for the farm stands until its day.
    """
    maker = Membership.objects.filter(business_id=row.business_id, user_id=row.made_by_id).first()
    if maker is None or maker.role != Role.FARM:
        return True
    accesses = FarmAccess.objects.within(row.scope).filter(membership=maker, farm_id=row.farm_id)
    return maker.is_current and accesses.filter(hands_over=True).exists()
